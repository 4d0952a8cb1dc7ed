import './help-place.css';
import { onUse } from '../../parts/OnUse/on-use.tsx';
import { SHELL_WORDS as WORDS } from '../../words/shell.ts';

const HelpPage = onUse(() => import('./help-page.tsx').then((part) => part.HelpPage));

/** Behind the one quiet mark: a page that is fetched on use under a heading that is there at once, to be focused. */
export const HelpPlace = () => (
  <div class="help stack-wide">
    <h1 tabIndex={-1}>{WORDS.help}</h1>
    <HelpPage />
  </div>
);
