import { describe, expect, it } from 'vitest';
import type { LeafReading } from '../../src/leaf/types.ts';
import { answersOverLooks, findingsOverLooks } from '../../src/signs/findings-over-looks.ts';
import type { SeenAtLook } from '../../src/signs/seen-at-look.ts';
import type { Answers } from '../../src/signs/types.ts';
import { triage } from '../../src/triage.ts';

const look = (date: string, answers: Partial<Answers> = {}, green?: number): SeenAtLook => ({
  date,
  answers: { setting: {}, signs: {}, ...answers },
  photos: green === undefined ? [] : [young(green)],
});

/** A young leaf, pale (about 0.22) or green (about 0.58); what `yellow-even` was fitted on. */
const young = (green: number): LeafReading => ({
  role: 'new',
  trouble: [],
  leaf: { found: true },
  measures: { 'dark-green-index': { value: green, se: 0.03 } },
});

const ratio = (
  findings: ReturnType<typeof findingsOverLooks>,
  sign: string,
  from?: string,
): number | undefined => {
  const found = findings.find((finding) => finding.sign === sign && (!from || finding.from === from));
  return found && found.ifPresent / found.ifAbsent;
};

describe('all looks at one plant together', () => {
  it('keeps a mark that was seen first, though the leaf is green by now', () => {
    const first = look('2026-05-01', { signs: { 'yellow-even@new': 'seen' } });
    const now = look('2026-05-15', { signs: { 'yellow-even@new': 'absent' } });
    const findings = findingsOverLooks(now, [first]);
    expect(ratio(findings, 'yellow-even@new')).toBeGreaterThan(10);
    expect(ratio(findings, 'getting-better', 'records')).toBeGreaterThan(2);
  });

  it('says on which day an earlier look showed what this one does not', () => {
    const findings = findingsOverLooks(look('2026-05-15', {}, 0.58), [look('2026-05-01', {}, 0.2)]);
    const pale = findings.filter(({ sign, from }) => sign === 'yellow-even@new' && from === 'camera');
    expect(pale).toMatchObject([{ seenOn: '2026-05-01' }]);
    const again = findingsOverLooks(look('2026-05-15', {}, 0.15), [look('2026-05-01', {}, 0.4)]);
    expect(again.find(({ sign }) => sign === 'yellow-even@new')).not.toHaveProperty('seenOn');
  });

  it('does not ask for a comparison that today’s photo has made, and does where too few days lie between', () => {
    const asks = (date: string): boolean => {
      const { answers, photos } = look(date, { crop: 'kale', date, signs: { stunted: 'seen' } }, 0.58);
      const earlier = [look('2026-06-12', { crop: 'kale' }, 0.2)];
      const { nextChecks, openQuestions } = triage({ answers, photos, earlier, today: date, zone: 'north' });
      return [...nextChecks, ...openQuestions].some(({ id }) => id === 'wait-and-compare');
    };
    expect(asks('2026-06-15')).toBe(true);
    expect(asks('2026-06-19')).toBe(false);
  });

  it('takes what was found last of creatures, which come and go', () => {
    const first = look('2026-05-01', { signs: { aphids: 'seen' } });
    const now = look('2026-05-08', { signs: { aphids: 'absent' } });
    expect(ratio(findingsOverLooks(now, [first]), 'aphids')).toBeLessThan(1);
    expect(ratio(findingsOverLooks(look('2026-05-08'), [first]), 'aphids')).toBeGreaterThan(1);
  });

  it('counts every reporter once a sign', () => {
    const seen = { signs: { 'mottled@new': 'seen' } } as const;
    const findings = findingsOverLooks(look('2026-05-20', seen), [
      look('2026-05-01', seen),
      look('2026-05-10', seen),
    ]);
    expect(findings.filter(({ sign }) => sign === 'mottled@new')).toHaveLength(1);
  });

  it('sees by the camera that the young leaf has turned green, or has not', () => {
    const better = findingsOverLooks(look('2026-05-15', {}, 0.58), [look('2026-05-01', {}, 0.2)]);
    expect(ratio(better, 'getting-better')).toBeGreaterThan(2);
    const same = findingsOverLooks(look('2026-05-15', {}, 0.2), [look('2026-05-01', {}, 0.2)]);
    expect(ratio(same, 'getting-better')).toBeLessThan(0.8);
  });

  it('makes less of "not yet better" after three days than after a fortnight', () => {
    const first = look('2026-05-01', {}, 0.2);
    const onDay = (date: string): number =>
      ratio(findingsOverLooks(look(date, {}, 0.21), [first]), 'getting-better') ?? 1;
    expect(onDay('2026-05-04')).toBeGreaterThan(onDay('2026-05-15'));
    expect(onDay('2026-05-15')).toBeCloseTo(onDay('2026-05-30'), 9);
  });

  it('leaves the word to the grower who answers it', () => {
    const first = look('2026-05-01', {}, 0.2);
    const now = look('2026-05-15', { signs: { 'getting-better': 'absent' } }, 0.58);
    const findings = findingsOverLooks(now, [first]);
    expect(findings.filter(({ sign }) => sign === 'getting-better').map(({ from }) => from)).toEqual(['eye']);
  });

  it('does not depend on the order in which the earlier looks are handed over', () => {
    const a = look('2026-05-01', { signs: { aphids: 'seen', 'mottled@new': 'seen' } }, 0.2);
    const b = look('2026-05-08', { signs: { aphids: 'absent' } }, 0.4);
    const now = look('2026-05-20', { signs: { ants: 'seen' } }, 0.5);
    expect(findingsOverLooks(now, [a, b])).toEqual(findingsOverLooks(now, [b, a]));
  });
});

describe('circumstances over several looks', () => {
  it('keep the weather of the beginning and the last word on everything else', () => {
    const first = look('2026-05-01', { setting: { 'recent-temperature': 'cold-for-crop', netted: false } });
    const now = look('2026-05-20', { setting: { 'recent-temperature': 'about-right', netted: true } });
    expect(answersOverLooks(now, [first]).setting).toEqual({
      'recent-temperature': 'cold-for-crop',
      netted: true,
    });
  });

  it('keep marked what came from records, unless the grower has said since that it does not hold', () => {
    const first = look('2026-05-20', {
      setting: { 'wood-in-root-zone': true, netted: true },
      recorded: ['wood-in-root-zone'],
    });
    const later = look('2026-06-01');
    expect(answersOverLooks(later, [first])).toMatchObject({
      setting: { 'wood-in-root-zone': true, netted: true },
      recorded: ['wood-in-root-zone'],
    });
    const denied = look('2026-06-01', { notAsRecorded: ['wood-in-root-zone', 'netted'] });
    // What the grower said at that look was no record.
    expect(answersOverLooks(denied, [first]).setting).toEqual({ netted: true });
    const told = look('2026-06-01', { setting: { 'wood-in-root-zone': false } });
    expect(answersOverLooks(told, [first])).toMatchObject({ setting: { 'wood-in-root-zone': false } });
    expect(answersOverLooks(told, [first]).recorded).toBeUndefined();
  });
});
