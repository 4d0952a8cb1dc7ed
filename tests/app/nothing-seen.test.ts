import { describe, expect, it } from 'vitest';
import { sayNothingSeen } from '../../src/app/places/Look/say-nothing-seen.ts';
import type { DraftPhoto } from '../../src/app/state/draft.ts';
import type { LeafReading } from '../../src/leaf/types.ts';

const read = { leaf: { found: true }, trouble: [] as string[] } as unknown as LeafReading;
const photo = (more: Partial<DraftPhoto> = {}): DraftPhoto => ({
  id: 'a',
  role: 'old',
  taps: {} as DraftPhoto['taps'],
  ...more,
});
const NONE = 'No sign stands out in the photo.';

describe('where no sign is reported', () => {
  it('says that there is no photo, and speaks of none', () => {
    expect(sayNothingSeen([])).toBe('No photo in this look yet.');
    // A file that is no picture is none.
    const noPicture = { ...read, trouble: ['not-a-picture'] } as unknown as LeafReading;
    expect(sayNothingSeen([photo({ reading: noPicture })])).toBe('No photo in this look yet.');
  });

  it('says nothing while a photo is read, or read again', () => {
    expect(sayNothingSeen([photo()])).toBeUndefined();
    expect(sayNothingSeen([photo({ reading: read, stale: true })])).toBeUndefined();
    expect(sayNothingSeen([photo({ reading: read }), photo({ id: 'b', role: 'new' })])).toBeUndefined();
  });

  it('says nothing of photos that no sign is looked for in', () => {
    const dark = { ...read, trouble: ['too-dark'] } as unknown as LeafReading;
    for (const more of [
      { role: 'whole', reading: read },
      { role: 'normal', reading: read },
      { roleOpen: true, reading: read },
      { reading: dark },
      { failed: 'failed' },
    ] as Partial<DraftPhoto>[])
      expect(sayNothingSeen([photo(more)]), JSON.stringify(more)).toBeUndefined();
  });

  it('says that none stands out once a leaf was looked at', () => {
    expect(sayNothingSeen([photo({ reading: read })])).toBe(NONE);
    expect(sayNothingSeen([photo({ reading: read }), photo({ id: 'b', failed: 'failed' })])).toBe(NONE);
  });
});
