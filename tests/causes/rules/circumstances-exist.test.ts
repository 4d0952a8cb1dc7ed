import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import type { Circumstances } from '../../../src/causes/schema.ts';
import { CROP_GROUPS } from '../../../src/signs/crops.ts';
import { ALL_SIGNS } from '../../../src/signs/members-of.ts';
import { SETTINGS, type Setting } from '../../../src/signs/settings.ts';
import { CROPS } from '../../../src/signs/vocabulary.ts';

const cropNames: ReadonlySet<string> = new Set([...CROPS, ...Object.keys(CROP_GROUPS)]);

function outcomesOf(setting: Setting): readonly string[] {
  switch (setting.kind) {
    case 'yes-no':
      return ['yes', 'no'];
    case 'number':
      return setting.bands.map(({ id }) => id);
    default:
      return setting.options.map(({ id }) => id);
  }
}

function expectExists(when: Circumstances): void {
  if ('crop' in when) expect(cropNames).toContain(when.crop);
  else if ('season' in when) expect(['spring', 'summer', 'autumn', 'winter']).toContain(when.season);
  else expect(outcomesOf(SETTINGS[when.setting]), when.setting).toContain(when.is);
}

describe.each(KNOWLEDGE)('$id', ({ leanings, tempered, onlyCrops }) => {
  it('leans only on circumstances that can be answered', () => {
    for (const { when } of leanings) expectExists(when);
    for (const { when } of tempered ?? []) {
      if ('sign' in when) expect(ALL_SIGNS).toContain(when.sign);
      else expectExists(when);
    }
    for (const crop of onlyCrops ?? []) expect(cropNames).toContain(crop);
  });

  it('leans once on each circumstance', () => {
    const keys = leanings.map(({ when }) => JSON.stringify(when));
    expect(new Set(keys).size).toBe(keys.length);
  });
});
