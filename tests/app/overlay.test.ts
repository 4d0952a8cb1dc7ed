import { describe, expect, it } from 'vitest';
import {
  drag,
  follow,
  MOST_ZOOM,
  placeInView,
  spotUnder,
  WHOLE,
  zoomAt,
} from '../../src/app/parts/Specimen/zoom-view.ts';
import { troubleOf } from '../../src/app/parts/Viewfinder/open-camera.ts';
import { LEAST_MS, type SettledHint, settleHint } from '../../src/app/parts/Viewfinder/settle-hint.ts';
import { isInside } from '../../src/app/places/Look/is-inside.ts';
import { changeDraft, type DraftChange } from '../../src/app/state/change-draft.ts';
import { emptyDraft } from '../../src/app/state/draft.ts';
import { LAYER_WORDS, LAYERS_OF } from '../../src/app/words/layers.ts';
import { LAYERS } from '../../src/app/workers/lay-layers.ts';
import { MEASURES } from '../../src/leaf/measures.ts';

describe('an enlarged photo', () => {
  it('keeps what lies under the fingers where it is', () => {
    const at = { x: 0.7, y: 0.2 };
    const spot = spotUnder(WHOLE, at);
    const view = zoomAt(WHOLE, 3, at);
    expect(spotUnder(view, at).x).toBeCloseTo(spot.x);
    expect(placeInView(view, spot).y).toBeCloseTo(at.y);
  });

  it('never leaves the photo, however far it is dragged or enlarged', () => {
    const far = drag(zoomAt(WHOLE, 100), 5, -5);
    expect(far).toEqual({ zoom: MOST_ZOOM, left: 0, top: 1 - 1 / MOST_ZOOM });
    expect(zoomAt(far, 0.001)).toEqual(WHOLE);
    expect(drag(WHOLE, 0.3, 0.3)).toEqual(WHOLE);
  });

  it('follows the cross out of sight', () => {
    const view = follow({ zoom: 4, left: 0, top: 0 }, { x: 0.9, y: 0.5 });
    const { x, y } = placeInView(view, { x: 0.9, y: 0.5 });
    for (const part of [x, y]) expect(part > 0 && part < 1).toBe(true);
  });
});

describe('the hint of the viewfinder', () => {
  const run = (...frames: [number, Parameters<typeof settleHint>[1]][]): (string | undefined)[] => {
    let settled: SettledHint = { since: 0 };
    return frames.map(([now, said]) => {
      settled = settleHint(settled, said, now);
      return settled.hint;
    });
  };

  it('comes at once, changes only for two frames running, and at most once a second', () => {
    expect(
      run([0, 'no-leaf'], [500, 'ready'], [1000, 'ready'], [1500, 'hold-still'], [1900, 'hold-still']),
    ).toEqual(['no-leaf', 'no-leaf', 'ready', 'ready', 'ready']);
    expect(run([0, 'ready'], [LEAST_MS, 'too-dark'], [LEAST_MS + 1, 'ready'])).toEqual([
      'ready',
      'ready',
      'ready',
    ]);
  });

  it('tells why there is no picture by the names of the standard (W3C Media Capture and Streams)', () => {
    expect(troubleOf(new DOMException('', 'NotAllowedError'))).toBe('refused');
    expect(troubleOf(new DOMException('', 'NotFoundError'))).toBe('none');
    expect(troubleOf(new DOMException('', 'NotReadableError'))).toBe('taken');
    expect(troubleOf('anything')).toBe('none');
  });
});

describe('taps', () => {
  const start = changeDraft(emptyDraft('draft', '2026-06-18'), { kind: 'add-photos', photos: [{ id: 'a' }] });
  const tapsAfter = (...changes: DraftChange[]) => changes.reduce(changeDraft, start).photos[0]?.taps;
  const tap = (mode: 'leaf' | 'add' | 'remove' | 'white', x: number): DraftChange => ({
    kind: 'tap',
    photoId: 'a',
    mode,
    spot: { x, y: 0.5 },
  });
  const back: DraftChange = { kind: 'untap-last', photoId: 'a' };

  it('are taken back one by one in the order they were made, whatever their kind', () => {
    const made = [tap('leaf', 0.1), tap('add', 0.2), tap('white', 0.3), tap('remove', 0.4)];
    for (let taken = 0; taken <= made.length; taken++)
      expect(tapsAfter(...made, ...Array(taken).fill(back))).toEqual(
        tapsAfter(...made.slice(0, made.length - taken)),
      );
    expect(tapsAfter(back)).toEqual({});
  });

  it('a new place for the outline drops its corrections, and taking it back brings them again', () => {
    const made = [tap('leaf', 0.1), tap('add', 0.2)];
    expect(tapsAfter(...made, tap('leaf', 0.7))).not.toHaveProperty('add');
    expect(tapsAfter(...made, tap('leaf', 0.7), back)).toEqual(tapsAfter(...made));
    expect(tapsAfter(...made, { kind: 'untap', photoId: 'a' }, back)).toEqual(tapsAfter(...made));
  });
});

describe('words of the layers', () => {
  it('name every layer and its pattern, no two alike, with a number that points back to it', () => {
    const words = LAYERS.map((id) => LAYER_WORDS[id]);
    for (const part of ['name', 'drawn', 'measure'] as const)
      expect(new Set(words.map((word) => word[part])).size).toBe(LAYERS.length);
    const ids = new Set<string>(MEASURES.map(({ id }) => id));
    for (const id of LAYERS) {
      expect(ids.has(LAYER_WORDS[id].measure)).toBe(true);
      expect(LAYERS_OF[LAYER_WORDS[id].measure]).toEqual([id]);
    }
  });
});

it('knows inside from outside of an outline with a bay', () => {
  const bay = [
    { x: 0, y: 0 },
    { x: 1, y: 0 },
    { x: 1, y: 1 },
    { x: 0.5, y: 0.4 },
    { x: 0, y: 1 },
  ];
  expect(isInside(bay, { x: 0.5, y: 0.2 })).toBe(true);
  expect(isInside(bay, { x: 0.5, y: 0.8 })).toBe(false);
  expect(isInside(bay, { x: 1.2, y: 0.5 })).toBe(false);
});
