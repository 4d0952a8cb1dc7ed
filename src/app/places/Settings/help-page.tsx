import type { ComponentChildren } from 'preact';
import { DemoWayIn } from '../../parts/Demo/demo-parts.tsx';
import { showPart } from '../../parts/OnUse/keep-focus.ts';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { WithTerms } from '../../parts/Terms/with-terms.tsx';
import { inDemo } from '../../state/demo.ts';
import { BACKUP_WORDS } from '../../words/backup.ts';
import { DEMO_WORDS } from '../../words/demo.ts';
import { HELP_WORDS as WORDS } from '../../words/help.ts';
import { LICENCE_WORDS } from '../../words/licences.ts';
import { NETWORK_WORDS } from '../../words/network.ts';
import { TERM_WORDS } from '../../words/terms.ts';
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

interface HelpPart {
  readonly title: string;
  readonly shows: ComponentChildren;
}

/** What explains comes first, then what can be set. */
const EXPLAINS: readonly HelpPart[] = [
  { title: WORDS.what.title, shows: <Chapter {...WORDS.what} /> },
  { title: WORDS.not.title, shows: <Chapter {...WORDS.not} /> },
  { title: WORDS.photos.title, shows: <Chapter {...WORDS.photos} /> },
  { title: WORDS.how.title, shows: <Chapter {...WORDS.how} /> },
  { title: TERM_WORDS.all, shows: <TermsPart /> },
  { title: WORDS.privacy.title, shows: <Chapter {...WORDS.privacy} /> },
];
const SETS: readonly HelpPart[] = [
  ...(inDemo ? [] : [{ title: DEMO_WORDS.name, shows: <DemoWayIn /> }]),
  { title: WORDS.settings.title, shows: <SettingsForm /> },
  { title: BACKUP_WORDS.title, shows: <BackupPart /> },
  { title: NETWORK_WORDS.title, shows: <NetworkPart /> },
  { title: WORDS.storage.title, shows: <StorageState /> },
  { title: WORDS.offline.title, shows: <OfflineState /> },
  { title: LICENCE_WORDS.title, shows: <LicencesPart /> },
];
const PARTS = [...EXPLAINS, ...SETS];

const idOf = (part: HelpPart): string => `help-${PARTS.indexOf(part)}`;

/** What the tool is and cannot do, how to read it, what its words mean; below that settings, backup and what is stored. */
export function HelpPage() {
  return (
    <>
      <nav class="help-contents" aria-label={WORDS.contents}>
        <Contents title={WORDS.explains} parts={EXPLAINS} />
        <Contents title={WORDS.sets} parts={SETS} />
      </nav>
      {PARTS.map((part) => (
        <div key={part.title} id={idOf(part)}>
          {part.shows}
        </div>
      ))}
    </>
  );
}

function Contents({ title, parts }: { readonly title: string; readonly parts: readonly HelpPart[] }) {
  return (
    <div>
      <p class="list-title">{title}</p>
      <ul>
        {parts.map((part) => (
          <li key={part.title}>
            <button type="button" class="button-words" onClick={() => showPart(idOf(part))}>
              {part.title}
            </button>
          </li>
        ))}
      </ul>
    </div>
  );
}

function Chapter({ title, lines }: { readonly title: string; readonly lines: readonly string[] }) {
  return (
    <section class="stack-close">
      <h2>{title}</h2>
      {lines.map((line) => (
        <p key={line}>
          <WithTerms>{line}</WithTerms>
        </p>
      ))}
    </section>
  );
}
