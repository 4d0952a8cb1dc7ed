import { install, offline } from '../../offline.ts';
import { HELP_WORDS } from '../../words/help.ts';

const WORDS = HELP_WORDS.offline;

/** Whether the app works without a signal, and how to put it on the home screen. */
export function OfflineState() {
  const state = offline.value;
  const prompt = install.value;
  return (
    <section class="stack-close">
      <h2>{WORDS.title}</h2>
      <p>{state === 'none' ? WORDS.none : state === 'unknown' ? WORDS.waiting : WORDS.ready}</p>
      <h3>{WORDS.install}</h3>
      {prompt ? (
        <button type="button" class="button" onClick={() => void prompt.prompt()}>
          {WORDS.installNow}
        </button>
      ) : (
        <p>{WORDS.installHow}</p>
      )}
    </section>
  );
}
