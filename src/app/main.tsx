import { render } from 'preact';
import './look/tokens.css';
import './look/page.css';
import './look/shell.css';
import './look/marks.css';
import { followInstall, registerOffline } from './offline.ts';
import { keepFocus } from './parts/OnUse/keep-focus.ts';
import { Shell } from './shell.tsx';
import { afterPaint } from './state/after-paint.ts';
import { followDemo } from './state/demo.ts';
import { followGarden } from './state/garden.ts';
import { followKept } from './state/kept.ts';
import { followLessons } from './state/learning.ts';
import { followLook, openAtStart } from './state/look-session.ts';
import { followNetwork } from './state/network.ts';
import { dropOldDrafts } from './state/pictures.ts';
import { followTheme } from './state/preferences.ts';
import { followQuestion } from './state/question.ts';
import { followHash } from './state/route.ts';
import { countWaiting } from './state/shared-photos.ts';

followTheme();
keepFocus();
followHash();
followInstall();
followDemo();
followKept();
followGarden();
followLessons();
followLook();
followQuestion();
followNetwork();
openAtStart();
const home = document.getElementById('app');
if (home) render(<Shell />, home);
if (import.meta.env.PROD) registerOffline();
void dropOldDrafts();
void countWaiting();
// Only looks with photos that the network saw wait for it, and most gardens have taught it nothing.
afterPaint()
  .then(() => import('./state/own-head.ts'))
  .then(
    ({ followOwnHead }) => followOwnHead(),
    () => {},
  );
