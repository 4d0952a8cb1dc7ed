/** @jsxImportSource preact */
/**
 * The drawings beside the questions: one for each mark, sign, creature, lie over the bed, check, answer about the setting, kind
 * of photo, place on the plant and step of a pot test. Our own, in one weight of line, so that answering is pointing.
 */
import './drawings.css';
import type { JSX } from 'preact';
import { CHECK_DRAWINGS, LYING_DRAWINGS, POSITION_DRAWINGS, ROLE_DRAWINGS } from './checks.ts';
import { CREATURE_DRAWINGS } from './creatures.ts';
import { INJURY_DRAWINGS } from './injury.ts';
import { MARK_DRAWINGS } from './marks.ts';
import { PLANT_DRAWINGS } from './plant-signs.ts';
import { SETTING_DRAWINGS } from './settings/index.ts';
import { SPREAD_DRAWINGS } from './spread.ts';
import { flatten, type Parts, type Stroke } from './strokes.ts';
import { TERM_DRAWINGS } from './terms.ts';

const drawById: ReadonlyMap<string, () => Parts> = new Map(
  [
    MARK_DRAWINGS,
    PLANT_DRAWINGS,
    CREATURE_DRAWINGS,
    SPREAD_DRAWINGS,
    CHECK_DRAWINGS,
    ROLE_DRAWINGS,
    POSITION_DRAWINGS,
    LYING_DRAWINGS,
    SETTING_DRAWINGS,
    TERM_DRAWINGS,
    INJURY_DRAWINGS,
  ].flatMap((set) => Object.entries<() => Parts>(set)),
);

/** Each is worked out when it is first shown: all of them at once would hold up a phone for half a second. */
const strokesById = new Map<string, readonly Stroke[]>();

function strokesOf(id: string): readonly Stroke[] | undefined {
  const draw = drawById.get(id);
  if (!draw) return undefined;
  const strokes = strokesById.get(id) ?? flatten(draw());
  strokesById.set(id, strokes);
  return strokes;
}

/** What every drawing shares: the sheet's size and the pen. */
const SHEET = {
  class: 'drawing',
  viewBox: '0 0 96 96',
  fill: 'none',
  'fill-rule': 'evenodd',
  stroke: 'currentColor',
  'stroke-width': '2',
  'stroke-linecap': 'round',
  'stroke-linejoin': 'round',
} as const;

/** The id without the place on the plant: `mottled@old` is drawn as `mottled`. */
const withoutPlace = (of: string): string => of.replace(/@(old|new|some)$/, '');

/** Every id that has a drawing of its own. */
export const DRAWN_IDS: readonly string[] = [...drawById.keys()];
export const hasDrawing = (of: string): boolean => drawById.has(withoutPlace(of));

/**
 * Draws what `of` names: a mark (with or without `@old`, `@new`, `@some`), a broader mark, any other sign, a check, a
 * photo's role (`old`, `new`, `whole`, `normal`), `position-old`, `position-new`, how it lies (`lying-most-old`), a
 * setting's answer (`setting-wind-windy`) or its question of yes or no (`setting-netted`), or a step of injury (`injury-40`). With a title it is an image for a
 * screen reader, without one it is hidden from it. Nothing is drawn for an unknown id.
 */
export function Drawing({ of, title }: { of: string; title?: string }): JSX.Element | null {
  const strokes = strokesOf(withoutPlace(of));
  if (!strokes) return null;
  const paths = strokes.map((stroke, index) => <path key={index} class={stroke.look} d={stroke.d} />);
  if (title === undefined)
    return (
      <svg {...SHEET} aria-hidden="true">
        {paths}
      </svg>
    );
  return (
    <svg {...SHEET} role="img" aria-label={title}>
      <title>{title}</title>
      {paths}
    </svg>
  );
}
