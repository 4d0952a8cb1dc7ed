import { describe, expect, it } from 'vitest';
import { describeReason } from '../../src/app/words/reasons.ts';
import type { Zone } from '../../src/days/growing-year.ts';
import type { Answers } from '../../src/signs/types.ts';
import { CROPS, type CropId } from '../../src/signs/vocabulary.ts';
import { type TriageResult, triage } from '../../src/triage.ts';

const NAMES_A_SEASON = /\b(spring|summer|autumn|winter)s?\b/i;

interface Look {
  readonly zone: Zone;
  readonly date?: string;
  readonly crop?: CropId;
  readonly seen?: readonly string[];
}

function lookIn({ zone, date, crop = 'cucumber', seen = ['white-powder@old'] }: Look): TriageResult {
  const signs = Object.fromEntries(seen.map((sign) => [sign, 'seen' as const]));
  const answers = { crop, ...(date ? { date } : {}), setting: {}, signs };
  return triage({ photos: [], answers, today: date ?? '2026-01-10', zone, draws: 2 });
}

/** Every reason as the look says it: what, and why it leans. */
const saidIn = ({ causes, findings }: TriageResult): string[] =>
  causes
    .flatMap((cause) => [...cause.for, ...cause.against])
    .map((reason) => describeReason(reason, { answers: { signs: {} }, findings }))
    .map(({ says, because }) => `${says}: ${because ?? ''}`);

const chancesOf = ({ causes }: TriageResult): Record<string, number> =>
  Object.fromEntries(causes.map(({ id, probability }) => [id, probability]));

describe('where no winter comes', () => {
  it('names no season of a temperate year, whatever the crop', () => {
    for (const crop of CROPS) {
      const said = saidIn(lookIn({ zone: 'tropics', date: '2026-01-10', crop }));
      expect(said.length, crop).toBeGreaterThan(10);
      const naming = said.filter((line) => NAMES_A_SEASON.test(line.replace(/^no winter comes here/, '')));
      expect(naming, crop).toEqual([]);
    }
  });

  it('says where the garden lies, not the date, where the want of cold speaks', () => {
    const { causes, findings } = lookIn({
      zone: 'tropics',
      date: '2026-01-10',
      seen: ['black-growth@new', 'after-cold'],
    });
    const frost = causes.find(({ id }) => id === 'frost')!;
    const reason = frost.against.find(({ sign }) => sign === 'season=no-winter')!;
    expect(describeReason(reason, { answers: { signs: {} }, findings })).toMatchObject({
      says: 'no winter comes here',
      by: 'where the garden lies',
      because: 'frost is rare where it is warm all year',
    });
  });

  it('weighs the same on every day of the year', () => {
    const january = chancesOf(lookIn({ zone: 'tropics', date: '2026-01-10' }));
    for (const date of ['2026-04-10', '2026-07-10', '2026-10-10'])
      expect(chancesOf(lookIn({ zone: 'tropics', date }))).toEqual(january);
  });

  it('holds cold and frost for less likely than a look without a date, and leaves all else as it was', () => {
    const seen = ['stunted', 'purple-tint@old', 'after-cold'];
    const undated = chancesOf(lookIn({ zone: 'tropics', seen }));
    const here = chancesOf(lookIn({ zone: 'tropics', seen, date: '2026-01-10' }));
    for (const cold of ['frost', 'cold-check']) expect(here[cold]!).toBeLessThan(0.75 * undated[cold]!);
    // What cold no longer explains falls to the others; none of them is held down by a summer that is none.
    const others = Object.keys(here).filter(
      (id) => undated[id]! > 0 && id !== 'frost' && id !== 'cold-check',
    );
    expect(others.length).toBeGreaterThan(20);
    for (const id of others) expect(here[id]! / undated[id]!, id).toBeGreaterThan(0.99);
  });

  it('does not take January for the high summer of the south', () => {
    const [tropics, south] = (['tropics', 'south'] as const).map((zone) =>
      chancesOf(lookIn({ zone, date: '2026-01-10', seen: ['stunted'] })),
    );
    expect(tropics!['low-light']!).toBeGreaterThan(south!['low-light']!);
  });
});

describe('south of the equator', () => {
  it('has high summer in January and weighs it as the north does July', () => {
    const january = lookIn({ zone: 'south', date: '2026-01-10' });
    expect(chancesOf(january)).toEqual(chancesOf(lookIn({ zone: 'north', date: '2026-07-10' })));
    const seasons = saidIn(january).filter((line) => line.startsWith('it is '));
    expect(seasons.length).toBeGreaterThan(0);
    for (const line of seasons) expect(line).toMatch(/^it is summer/);
  });

  it('is weighed as the north where no day is said', () => {
    const undated = (zone: Zone): unknown => {
      const said = { 'weeks-since-mixed-in': 9, 'wood-in-root-zone': true } as const;
      const answers: Answers = { crop: 'kale', setting: said, signs: { stunted: 'seen' } };
      return chancesOf(triage({ photos: [], answers, today: '2026-01-10', zone, draws: 2 }));
    };
    expect(undated('south')).toEqual(undated('north'));
    expect(undated('tropics')).not.toEqual(undated('north'));
  });

  it('has winter in July, when fewer mildews are about', () => {
    const seen = ['yellow-patches@old'];
    const [july, january] = ['2026-07-10', '2026-01-10'].map((date) =>
      chancesOf(lookIn({ zone: 'south', date, seen })),
    );
    expect(july!['powdery-mildew']!).toBeLessThan(0.5 * january!['powdery-mildew']!);
  });
});
