import { inDemo } from '../../state/demo.ts';
import { onUse } from '../OnUse/on-use.tsx';

const WayIn = onUse(() => import('./demo-way-in.tsx').then((part) => part.DemoWayIn));

/** The way into the invented garden; nothing while in it. */
export const DemoWayIn = () => (inDemo ? null : <WayIn />);

/** Says on every screen that nothing here is the grower's own. */
export const DemoStrip = onUse(() => import('./demo-strip.tsx').then((part) => part.DemoStrip));
