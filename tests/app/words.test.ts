import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CAUSE_NAMES, FAMILY_NAMES, joinWords } from '../../src/app/words/causes.ts';
import { describeQuestion, describeTellsApart, describeWhatItTells } from '../../src/app/words/checks.ts';
import { CROP_WORDS, findCrops } from '../../src/app/words/crops.ts';
import { LOOK_WORDS } from '../../src/app/words/look.ts';
import { PHOTO_TROUBLE_WORDS } from '../../src/app/words/photo-troubles.ts';
import { TERMS } from '../../src/app/words/terms.ts';
import { sayShift } from '../../src/app/words/weighing.ts';
import { CAUTIONS } from '../../src/causes/cautions.ts';
import { CHECKS } from '../../src/causes/checks.ts';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { PHOTO_TROUBLES } from '../../src/photo/types.ts';
import { SETTINGS, type SettingId } from '../../src/signs/settings.ts';
import { CAUSES, CROPS, FAMILIES, SPREAD_SIGNS } from '../../src/signs/vocabulary.ts';

describe('the words of the app', () => {
  it('says of every trouble with a photo what to do, and blames nobody', () => {
    for (const code of PHOTO_TROUBLES) {
      const says = PHOTO_TROUBLE_WORDS[code];
      // At least two sentences or clauses: what is wrong, then what to do.
      expect(says.split(/[.:;,]\s/).length, code).toBeGreaterThan(1);
      expect(says, code).not.toMatch(/\byou (failed|must|should have)\b|error|invalid/i);
    }
  });

  it('has a short name for every cause and family, no two alike', () => {
    expect(Object.keys(CAUSE_NAMES).sort()).toEqual(CAUSES.map(({ id }) => id).sort());
    expect(new Set(Object.values(CAUSE_NAMES)).size).toBe(CAUSES.length);
    expect(Object.keys(FAMILY_NAMES).sort()).toEqual(FAMILIES.map(({ id }) => id).sort());
  });

  it('asks every setting and check in words', () => {
    for (const setting of Object.keys(SETTINGS) as SettingId[])
      expect(describeQuestion({ kind: 'setting', setting }).asks).toMatch(/\?$/);
    for (const { id } of CHECKS) expect(describeQuestion({ kind: 'check', check: id }).asks).toMatch(/[.?]$/);
    expect(describeQuestion({ kind: 'sign', sign: 'mottled@new' })).toEqual({
      where: 'The youngest leaves, at the tip',
      asks: 'Patchwork of light and dark green (mosaic)?',
    });
  });

  it('asks how it lies and came about as a question, not as a line of a list', () => {
    for (const { id } of SPREAD_SIGNS)
      expect(describeQuestion({ kind: 'sign', sign: id }).asks).toMatch(/^(Is|Does|Did|Has) .*\?/);
  });

  it('asks a group of signs under one name, in the list and one at a time', () => {
    const asked = { plant: 'stunted', creature: 'slime', spread: 'patch', test: 'pot-test-injury' } as const;
    for (const [group, sign] of Object.entries(asked))
      expect(LOOK_WORDS.groups[group as keyof typeof asked]).toBe(
        describeQuestion({ kind: 'sign', sign }).where,
      );
    const setting = describeQuestion({ kind: 'setting', setting: 'place' }).where;
    expect(LOOK_WORDS.groups.setting).toBe(setting);
  });

  it('says who is made ill, and what is not there', () => {
    const said = JSON.stringify([CAUTIONS, KNOWLEDGE, TERMS]);
    expect(said).not.toMatch(/\bmakes? ill\b|\bdots nothing\b/);
  });

  it('says how an answer moved a cause, and does not name one number twice', () => {
    expect(sayShift({ cause: 'aphids', before: 0.6, after: 0.03 })).toBe(
      'aphids: from about 6 in 10 to about 3 in 100',
    );
    expect(sayShift({ cause: 'aphids', before: 0.86, after: 0.93 })).toBe(
      'aphids: a little more, still about 9 in 10',
    );
  });

  it('says what a question tells apart', () => {
    expect(describeTellsApart(['old-leaves', 'magnesium-short'])).toBe(
      'tells old leaves dying off from short of magnesium',
    );
    expect(describeTellsApart(['aphids'])).toBe('speaks for or against aphids');
    expect(describeTellsApart(['unlisted', 'frost'])).toBe('tells frost from something else');
    expect(describeTellsApart(['frost', 'unlisted'])).toBe('tells frost from something else');
    expect(describeTellsApart([])).toBe('');
  });

  it('says what an answer decides where the cause is hardly in doubt', () => {
    const hunters = { tellsApart: ['aphids', 'virus'], turnsTo: ['leave'], bits: 0.007 } as const;
    expect(describeWhatItTells(hunters)).toBe('tells whether to leave it');
    expect(describeWhatItTells({ ...hunters, turnsTo: ['act', 'leave'] })).toBe(
      'tells whether to act now or to leave it',
    );
    expect(describeWhatItTells({ ...hunters, bits: 0.4 })).toBe('tells aphids from virus');
    // A look kept before this was counted says what it said.
    const { turnsTo: _, ...kept } = hunters;
    expect(describeWhatItTells(kept)).toBe('tells aphids from virus');
  });

  it('joins words as people do', () => {
    expect(joinWords(['a'])).toBe('a');
    expect(joinWords(['a', 'b', 'c'])).toBe('a, b and c');
    expect(joinWords(['a', 'b'], 'or')).toBe('a or b');
  });

  it('never says certain, names no percent of a cause, and uses no exclamation', () => {
    const folder = new URL('../../src/app/words/', import.meta.url);
    for (const file of readdirSync(folder)) {
      const strings = readFileSync(new URL(file, folder), 'utf8')
        .replace(/\/\*[\s\S]*?\*\//g, '')
        .match(/'[^'\n]*'|`[^`]*`/g);
      for (const words of strings ?? []) expect(words, file).not.toMatch(/\bcertain(ly)?\b|\w!|guarantee/i);
    }
  });
});

describe('finding a crop', () => {
  it('offers every crop exactly once, common ones first, another crop last', () => {
    const all = findCrops('');
    expect([...all].sort()).toEqual([...CROPS].sort());
    expect(all[0]).toBe('tomato');
    expect(all.at(-1)).toBe('other');
  });

  it.each([
    ['chil', 'pepper'],
    ['zucch', 'courgette'],
    ['Egg', 'aubergine'],
    ['fava', 'broad-bean'],
    ['sprout', 'brussels-sprout'],
  ])('finds "%s" by another name: %s', (query, crop) => {
    expect(findCrops(query)).toContain(crop);
  });

  it('always leaves a way on when nothing fits', () => {
    expect(findCrops('zzzz')).toEqual(['other']);
    expect(Object.keys(CROP_WORDS)).toHaveLength(CROPS.length);
  });
});
