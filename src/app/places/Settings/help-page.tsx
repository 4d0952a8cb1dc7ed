import { DemoWayIn } from '../../parts/Demo/demo-parts.tsx';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { HELP_WORDS as WORDS } from '../../words/help.ts';
import { OfflineState } from './offline-state.tsx';
import { SettingsForm } from './settings-form.tsx';
import { StorageState } from './storage-state.tsx';

/* Packing and unpacking files weighs. */
const BackupPart = onUse(() => import('./backup-part.tsx').then((part) => part.BackupPart));

/* It knows the marks by name. */
const NetworkPart = onUse(() => import('./network-part.tsx').then((part) => part.NetworkPart));

const TermsPart = onUse(() => import('./terms-part.tsx').then((part) => part.TermsPart));
/* The texts of the licences are longer than the page. */
const LicencesPart = onUse(() => import('./licences-part.tsx').then((part) => part.LicencesPart));

/** Settings, what is stored, what the tool is and cannot do. */
export function HelpPage() {
  return (
    <>
      <SettingsForm />
      <NetworkPart />
      <BackupPart />
      <Chapter {...WORDS.what} />
      <Chapter {...WORDS.not} />
      <Chapter {...WORDS.how} />
      <TermsPart />
      <Chapter {...WORDS.photos} />
      <Chapter {...WORDS.privacy} />
      <DemoWayIn />
      <StorageState />
      <OfflineState />
      <LicencesPart />
    </>
  );
}

function Chapter({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <section class="stack-close">
      <h2>{title}</h2>
      {lines.map((line) => (
        <p key={line}>{line}</p>
      ))}
    </section>
  );
}
