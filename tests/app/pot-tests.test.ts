import { describe, expect, it } from 'vitest';
import { looksRead } from '../../src/app/places/Book/PotTest/looks-read.ts';
import {
  cardOf,
  emergedSoFar,
  endLook,
  givenUp,
  inPlace,
  isLeftOpen,
  isScored,
  lookAsked,
  lookDay,
  looksOf,
  newPotTest,
  readingTold,
  scoreAt,
  sownOnDay,
  withoutScore,
  withScore,
} from '../../src/app/state/pot-tests.ts';
import { hashOf, readRoute } from '../../src/app/state/route.ts';
import { nameField, nameRecord, sayValue } from '../../src/app/words/backup.ts';
import { POT_WORDS, sayState } from '../../src/app/words/pot-test.ts';
import {
  sayCautions,
  sayHarm,
  sayHarms,
  sayHowOftenWrong,
  sayLimits,
  sayNext,
  saySeen,
  sayStillBefore,
  sayVerdict,
  sayVoid,
  sayWhyOfBatch,
} from '../../src/app/words/pot-test-reading.ts';
import { INJURY_STEPS } from '../../src/compare/pot-test/injury-scale.ts';
import { planPotTest } from '../../src/compare/pot-test/plan-pot-test.ts';
import { dayAfter } from '../../src/days/days.ts';
import type { PotTestRecord } from '../../src/garden/ground-records.ts';
import { listToday } from '../../src/garden/list-today.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import { potTestsOfBed } from '../../src/garden/settle-pot-test.ts';
import { isSuspected } from '../../src/garden/trace-batches.ts';
import { garden, record } from '../garden/small-garden.ts';

const SOWN = '2026-05-01';
const NOW = '2026-05-25T08:00:00.000Z';
const card = planPotTest({ question: 'residue', sowOn: SOWN, sensitiveFollows: true, seed: 9 });
const laidOut = newPotTest(card, 'heap', SOWN, NOW);
const sown = sownOnDay(laidOut, SOWN);
const batch = record('batch', 'heap', {
  name: 'Stable heap',
  what: 'horse-manure',
  given: [{ id: 'g', date: '2026-04-20', bedId: 'long' }],
});
const why = sayWhyOfBatch;

/** Every pot scored on a day: the load like this, clean mix like that. */
const scored = (
  test: PotTestRecord,
  day: string,
  load: Parameters<typeof withScore>[3],
  clean: Parameters<typeof withScore>[3],
): PotTestRecord =>
  test.pots.reduce((so, { id, role }) => withScore(so, day, id, role === 'test' ? load : clean), test);

const fullLook = (injury: number, day = dayAfter(SOWN, 24)): PotTestRecord =>
  scored(
    sown,
    day,
    { emerged: 3, injury, leafSets: 3, heightMm: injury > 30 ? 90 : 150 },
    { emerged: 3, injury: 0, leafSets: 3, heightMm: 150 },
  );

describe('a pot test from the bench to the verdict', () => {
  it('is laid out for a day, due to be sown then, and due a look once it is sown', () => {
    expect(laidOut.toSow).toBe(true);
    const due = (test: PotTestRecord) => listToday(garden(batch, test), '2026-06-30', () => undefined);
    expect(due(laidOut).map(({ due: day }) => day)).toEqual([SOWN]);
    const late = sownOnDay(laidOut, '2026-05-03');
    expect(late.toSow).toBeUndefined();
    expect(due(late).map(({ due: day }) => day)).toEqual(['2026-05-15']);
    // The bed's year tells of what was sown only.
    expect(potTestsOfBed(garden(batch, laidOut), 'long')).toEqual([]);
    expect(potTestsOfBed(garden(batch, late), 'long').map(({ date }) => date)).toEqual(['2026-05-03']);
  });

  it('gives the same card again from the record, and lists the pots as they stand', () => {
    expect(cardOf(sown)).toEqual(card);
    expect(cardOf({ ...sown, crop: 'cress' })).toBeUndefined();
    expect(inPlace([...sown.pots].reverse())).toEqual(sown.pots);
  });

  it('is stored as it is', () => {
    expect(repairRecord(JSON.parse(JSON.stringify(laidOut)))).toEqual(laidOut);
    const photo = withScore(sown, '2026-05-13', 'pot-1', {
      emerged: 2,
      photos: ['ph'],
      reading: { role: 'new' },
    });
    expect(repairRecord(JSON.parse(JSON.stringify(photo)))).toEqual(photo);
  });
});

describe('scoring pot by pot', () => {
  it('takes what is up from the last look, and nothing before anybody counted', () => {
    expect(withScore(sown, '2026-05-13', 'pot-1', { injury: 20 })).toEqual(sown);
    const counted = withScore(sown, '2026-05-13', 'pot-1', { emerged: 2 });
    const later = withScore(counted, '2026-05-18', 'pot-1', { injury: 20 });
    expect(scoreAt(later, '2026-05-18', 'pot-1')).toEqual({
      id: '2026-05-18 pot-1',
      date: '2026-05-18',
      potId: 'pot-1',
      emerged: 2,
      photos: [],
      injury: 20,
    });
    expect(emergedSoFar(later, '2026-05-20', 'pot-1')).toBe(2);
    // Touched again: one score, the rest of it kept.
    const again = withScore(
      withScore(later, '2026-05-18', 'pot-1', { heightMm: 80 }),
      '2026-05-18',
      'pot-1',
      {
        injury: undefined,
      },
    );
    expect(scoreAt(again, '2026-05-18', 'pot-1')).toMatchObject({ emerged: 2, heightMm: 80 });
    expect(scoreAt(again, '2026-05-18', 'pot-1')).not.toHaveProperty('injury');
    expect(withoutScore(again, '2026-05-18', 'pot-1')).toEqual(counted);
  });

  it('asks for a count first, then for leaves; a bare pot has none', () => {
    expect(lookAsked(sown, '2026-05-13')).toBe('count');
    expect(lookAsked(sown, '2026-05-20')).toBe('score');
    const counted = withScore(sown, '2026-05-13', 'pot-1', { emerged: 3 });
    expect(isScored(counted, '2026-05-13', 'pot-1')).toBe(true);
    const looked = withScore(counted, '2026-05-18', 'pot-1', { leafSets: 1 });
    expect(isScored(looked, '2026-05-18', 'pot-1')).toBe(false);
    expect(isScored(withScore(looked, '2026-05-18', 'pot-1', { injury: 0 }), '2026-05-18', 'pot-1')).toBe(
      true,
    );
    expect(isScored(withScore(counted, '2026-05-18', 'pot-2', { emerged: 0 }), '2026-05-18', 'pot-2')).toBe(
      true,
    );
  });

  it('goes on with a look that was left half-way, for three days, and not with one that was ended', () => {
    const half = withScore(sown, '2026-05-13', 'pot-1', { emerged: 3 });
    expect(lookDay(half, '2026-05-14')).toBe('2026-05-13');
    expect(lookDay(half, '2026-05-20')).toBe('2026-05-20');
    const { test } = endLook(half, batch, [], why, '2026-05-13', NOW);
    expect(lookDay(test, '2026-05-14')).toBe('2026-05-14');
    expect(looksOf(test)).toEqual(['2026-05-13']);
  });
});

describe('the end of a look', () => {
  it('sets the next look while nothing is decided, and tells nothing new of half a look', () => {
    const counted = scored(sown, '2026-05-13', { emerged: 3 }, { emerged: 3 });
    const { test, result, batch: after } = endLook(counted, batch, [], why, '2026-05-13', NOW);
    expect(result.verdict).toBe('go-on');
    expect(sayStillBefore(result, 'residue')).toHaveLength(1);
    expect(
      sayStillBefore(endLook(fullLook(60), batch, [], why, '2026-05-25', NOW).result, 'residue'),
    ).toEqual([]);
    expect(test).toMatchObject({ lookOn: '2026-05-18', said: { verdict: 'go-on', on: '2026-05-13' } });
    expect(test.endedOn).toBeUndefined();
    expect(after).toBeUndefined();
    const half = scored(test, '2026-05-18', { injury: 90 }, {});
    expect(readingTold(half)?.on).toBe('2026-05-13');
  });

  it('draws a look only once it has ended, so that no score tells what its pot holds', () => {
    const counted = scored(sown, '2026-05-13', { emerged: 3 }, { emerged: 3 });
    expect(looksRead(counted)).toEqual([]);
    const { test } = endLook(counted, batch, [], why, '2026-05-13', NOW);
    expect(looksRead(test)).toEqual(['2026-05-13']);
    const full = scored(test, '2026-05-25', { injury: 60 }, { injury: 0 });
    expect(looksRead(full)).toEqual(['2026-05-13']);
    expect(POT_WORDS.test.openLook('2026-05-25', 6, 6, '2026-05-25')).toMatch(/^All 6 pots .* are scored/);
    expect(POT_WORDS.test.openLook('2026-05-25', 5, 6, '2026-05-25')).toMatch(/half-finished: 5 of 6/);
    const { test: ended } = endLook(full, batch, [], why, '2026-05-25', NOW);
    expect(looksRead(ended)).toEqual(['2026-05-13', '2026-05-25']);
    // Given up, nothing is left to be scored blind.
    expect(looksRead(givenUp(full, '2026-05-26'))).toEqual(['2026-05-13', '2026-05-25']);
  });

  it('ends with a look that is taken after its end, and not with one put right later', () => {
    const { test: ended } = endLook(fullLook(60), batch, [], why, '2026-05-25', NOW);
    expect(ended.endedOn).toBe('2026-05-25');
    expect(endLook(ended, batch, [], why, '2026-05-30', NOW).test.endedOn).toBe('2026-05-25');
    const later = ended.pots.reduce(
      (test, { id, role }) =>
        withScore(test, '2026-05-30', id, { emerged: 3, injury: role === 'test' ? 60 : 0 }),
      ended,
    );
    expect(endLook(later, batch, [], why, '2026-05-30', NOW).test.endedOn).toBe('2026-05-30');
  });
  it('puts the load aside where it twists, with a sentence, and frees it where a later test clears it', () => {
    const { test, batch: aside } = endLook(fullLook(60), batch, [], why, '2026-05-25', NOW);
    expect(test).toMatchObject({ endedOn: '2026-05-25', said: { verdict: 'do-not-spread' } });
    expect(test.lookOn).toBeUndefined();
    expect(aside && isSuspected(aside)).toBe(true);
    expect(aside?.suspicion?.potTestSays).toMatch(
      /^Pot test of Monday 25 May 2026: twisted or cupped growth/,
    );
    const suspected = record('batch', 'heap', {
      name: 'Stable heap',
      suspicion: { state: 'suspected', on: '2026-05-01', why: 'curled beans' },
    });
    const freed = endLook(fullLook(0), suspected, [], why, '2026-05-25', NOW);
    expect(freed.test.said?.verdict).toBe('safe-enough');
    expect(freed.batch && isSuspected(freed.batch)).toBe(false);
    expect(givenUp(sown, '2026-05-20')).toMatchObject({ endedOn: '2026-05-20' });
  });
});

describe('a second sowing', () => {
  it('takes six pots of each kind where the first ended undecided, and only then', () => {
    const open: PotTestRecord = {
      ...sown,
      endedOn: '2026-06-10',
      said: { verdict: 'go-on', on: '2026-06-10', why: [] },
    };
    expect(isLeftOpen([open], 'heap')).toBe(true);
    expect(isLeftOpen([open], 'other')).toBe(false);
    expect(isLeftOpen([{ ...open, said: { ...open.said!, verdict: 'safe-enough' } }], 'heap')).toBe(false);
    expect(isLeftOpen([givenUp(sown, '2026-05-20')], 'heap')).toBe(false);
    expect(planPotTest({ question: 'residue', sowOn: SOWN, again: true, seed: 1 }).potsEach).toBe(6);
    expect(planPotTest({ question: 'ripeness', sowOn: SOWN, again: true, seed: 1 }).potsEach).toBe(4);
  });
});

describe('two devices that scored one pot differently', () => {
  it('are set side by side in words, without what a photo was read as', () => {
    expect(nameRecord(sown)).toBe('Pot test “french-bean”');
    expect(nameField('scores/2026-05-18 pot-1')).toBe('score of a pot');
    const score = {
      id: 'x',
      date: '2026-05-18',
      potId: 'pot-1',
      emerged: 3,
      injury: 20,
      reading: { big: 1 },
    };
    expect(sayValue('scores/x', score)).toBe('date: Monday 18 May 2026, pot: pot-1, emerged: 3, injury: 20');
    // With the record at hand the pot goes by its letter, as it stands on the pot.
    const { id, label } = sown.pots[1]!;
    expect(nameField(`scores/2026-05-18 ${id}`, sown)).toBe(`score of pot ${label}`);
    expect(sayValue('scores/x', { ...score, potId: id }, sown)).toContain(`pot: ${label}, emerged: 3`);
  });
});

describe('the words of a pot test', () => {
  const today = '2026-05-25';
  const told = (test: PotTestRecord) => endLook(test, batch, [], why, today, NOW);
  const bad = told(fullLook(60));
  const good = told(fullLook(0));
  const empty = told(scored(sown, '2026-05-25', { emerged: 3, injury: 50 }, { emerged: 1, injury: 0 }));
  const everything = [bad, good, empty].flatMap(({ test, result }) => [
    sayVerdict(result, 'residue', today),
    sayHarm(result, 'residue'),
    ...sayHarms(result),
    ...saySeen(test, result.on),
    ...sayNext(result, 'residue'),
    ...sayVoid(result).flatMap(({ why: reason, next }) => [reason, next]),
    ...sayHowOftenWrong(test),
    ...sayLimits('residue'),
    ...sayCautions(result),
    sayState(test, today),
  ]);

  it('say the verdict as a sentence, what was seen in numbers, and the chance as a frequency', () => {
    expect(sayVerdict(bad.result, 'residue', today)).toBe('Do not spread it.');
    expect(sayVerdict(good.result, 'residue', today)).toBe('Safe enough to spread.');
    expect(saySeen(bad.test, bad.result.on)).toContain(
      'Injury on average: 60 points of 100 with the load, 0 in clean mix.',
    );
    expect(sayHarm(bad.result, 'residue')).toMatch(/^Harms what grows in it: more than 99 in 100 loads/);
    expect(sayHarms(bad.result)[0]).toMatch(/^Twisted or cupped growth.*points of 100/);
    expect(sayState(bad.test, today)).toBe('Do not spread it');
  });

  it('say why a test is void and what to do next, before anything else', () => {
    expect(sayVerdict(empty.result, 'residue', today)).toMatch(/void/);
    expect(sayVoid(empty.result)[0]?.why).toMatch(/^In clean mix only 33 of 100 seeds came up; it takes 70/);
    expect(sayNext(empty.result, 'residue')[0]).toMatch(/fresh seed/);
  });

  it('say how often a test goes wrong with the numbers of the simulation', () => {
    const lines = sayHowOftenWrong(bad.test).join(' ');
    // French bean, four pots: 71 and 58.4 of clean loads freed, 91.6 and 76.8 of harmful ones stopped.
    expect(lines).toContain('58 to 71 were passed');
    expect(lines).toContain('77 to 92 stopped');
    expect(lines).toContain('fewer than 1 were passed by mistake');
  });

  it('carry the cautions: gloves, not eating, keeping aside, where to report; and name no weedkiller', () => {
    const said = everything.join(' ');
    for (const caution of [/gloves/, /do not eat/, /labelled/, /authority/, /supplier/, /passes it on/])
      expect(said).toMatch(caution);
    const all = [said, JSON.stringify(POT_WORDS), ...INJURY_STEPS.map(({ says }) => says)].join(' ');
    expect(all).not.toMatch(/pyralid|picloram|dicamba|2,4-D|glyphosate|triclopyr|fluroxypyr|MCPA|mecoprop/i);
    for (const line of everything) expect(line, line).not.toMatch(/\bundefined\b|NaN|certainly|impossible/);
  });

  it('say of ripeness that it is about ripeness, with what is known against the test, and leave the load free', () => {
    const ripeness = planPotTest({ question: 'ripeness', sowOn: SOWN, seed: 3 });
    const pots = sownOnDay(newPotTest(ripeness, 'heap', SOWN, NOW), SOWN);
    const day = dayAfter(SOWN, 20);
    const {
      test,
      result,
      batch: after,
    } = endLook(
      scored(pots, day, { emerged: 1, heightMm: 25 }, { emerged: 5, heightMm: 60 }),
      batch,
      [],
      why,
      day,
      NOW,
    );
    expect(after).toBeUndefined();
    expect(sayVerdict(result, 'ripeness', day)).toBe('Not ripe: sow and plant nothing in it yet.');
    expect(sayHarm(result, 'ripeness')).toMatch(/^Holds seedlings back: /);
    expect(sayNext(result, 'ripeness').join(' ')).toMatch(/some weeks more/);
    expect(sayLimits('ripeness').join(' ')).toMatch(/not sensitive enough/);
    expect(sayHowOftenWrong(test).join(' ')).toContain('66 to 84 stopped');
    expect(sayState(test, day)).toBe('Not ripe yet');
    expect(POT_WORDS.tells(ripeness)).toMatch(/^With 4 pots of each kind, such a test finds about 8 in 10/);
    expect(isScored(withScore(pots, day, 'pot-1', { emerged: 4 }), day, 'pot-1')).toBe(true);
  });

  it('promise no more than such a test keeps', () => {
    // The plan says how often: about 8 in 10 bad loads are stopped, 6 in 10 clean ones freed.
    expect(JSON.stringify(POT_WORDS)).not.toMatch(/for sure|for certain|find out whether|pots tell whether/i);
    for (const lead of [POT_WORDS.lead, POT_WORDS.batch.lead]) expect(lead).toMatch(/more often than not/);
  });

  it('do not tell a rater which pots hold what', () => {
    const scoring = [JSON.stringify(POT_WORDS.look), ...INJURY_STEPS.map(({ says }) => says)].join(' ');
    expect(scoring).not.toMatch(/control|clean mix|with the load/i);
  });
});

describe('the addresses of pot tests', () => {
  it('lead where they say', () => {
    for (const route of [
      { place: 'book', pots: 'list' },
      { place: 'book', pots: 'plan', pot: 'heap' },
      { place: 'book', pots: 'look', pot: 'a b', on: '2026-05-13' },
    ] as const)
      expect(readRoute(hashOf(route))).toEqual(route);
    expect(readRoute('#/book/pots')).toEqual({ place: 'book', pots: 'list' });
  });
});
