import { VIEWFINDER_WORDS } from '../../words/viewfinder.ts';

const WORDS = VIEWFINDER_WORDS.help;

export const HELP_ID = 'viewfinder-help';

/** How to hold leaf and camera, over the film until it is closed. It lies in the dialog: nothing else can be reached from there. */
export function ViewfinderHelp() {
  return (
    <div
      class="viewfinder-help stack-close"
      id={HELP_ID}
      popover="auto"
      role="dialog"
      aria-labelledby="viewfinder-help-title"
    >
      {/* Read from its head on: the button at its foot would draw the focus, and the page with it. */}
      <h3 id="viewfinder-help-title" tabIndex={-1} autofocus>
        {WORDS.title}
      </h3>
      <ul class="stack-close">
        {WORDS.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h4>{WORDS.hintsTitle}</h4>
      <dl class="stack-close">
        {WORDS.hints.map(({ hint, means }) => (
          <div key={hint}>
            <dt>“{hint}”</dt>
            <dd>{means}</dd>
          </div>
        ))}
      </dl>
      <button type="button" class="button" popovertarget={HELP_ID} popovertargetaction="hide">
        {VIEWFINDER_WORDS.close}
      </button>
    </div>
  );
}
