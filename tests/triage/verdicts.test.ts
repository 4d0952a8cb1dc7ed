import { describe, expect, it } from 'vitest';
import { CHECKS } from '../../src/causes/checks.ts';
import { COURSES } from '../../src/causes/courses.ts';
import { bestPlan, type DecisionTable, valueOfAnswers } from '../../src/ranker/decide-plan.ts';
import { decisionTable, EFFORT, type Facts } from '../../src/ranker/knowledge-model.ts';
import { knowledgeModel } from '../../src/triage.ts';
import { lookAt, type Told, tell } from './look-at.ts';

const TODAY = '2026-07-01';

/** Plants of every sort: nothing said, harmless, urgent, vague, unknown. */
const PLANTS: readonly (readonly [string, Told])[] = [
  ['nothing said', {}],
  ['a yellow lowest leaf', { crop: 'kale', seen: 'yellow-even@old new-growth-clean' }],
  ['greenfly', { crop: 'broad-bean', seen: 'aphids' }],
  ['greenfly with hunters', { crop: 'broad-bean', seen: 'aphids aphid-hunters' }],
  ['late blight', { crop: 'potato', seen: 'spreading-blotches@all grey-mould-under@old spreading' }],
  ['curled tips', { crop: 'tomato', seen: 'cupped-up@new twisted-narrow@new' }],
  ['hanging in wet soil', { crop: 'tomato', seen: 'wilts-wet-soil dull-limp@old' }],
  ['eaten seedlings', { crop: 'lettuce', seen: 'seedlings-gone slime' }],
  ['holes', { crop: 'cabbage', seen: 'holes@some' }],
  ['a golden variety', { crop: 'courgette', seen: 'whole-colour-golden@all variety-only' }],
  ['what fits nothing', { crop: 'leek', seen: 'silver-pattern@new felled pith-brown heart-blackened' }],
];

describe('every verdict', () => {
  it.each(PLANTS)('%s: has a later day, says what should be seen by then, and is the cheapest', (_, told) => {
    const { verdict } = lookAt({ ...told, date: TODAY });
    const days = (Date.parse(verdict.lookAgain) - Date.parse(TODAY)) / 86_400_000;
    expect(days).toBeGreaterThanOrEqual(1);
    expect(days).toBeLessThanOrEqual(90);
    expect(verdict.recovery.map(({ cause }) => cause)).toEqual(verdict.because.causes);
    for (const { looksLike } of verdict.recovery) expect(looksLike).toMatch(/^[A-Z].{15,}[.]$/);
    const losses = verdict.because.expectedLoss;
    expect(losses[verdict.id]).toBeCloseTo(Math.min(...Object.values(losses)), 9);
  });

  it.each(PLANTS)(
    '%s: says what to do where there is something to do, and nothing where there is not',
    (_, told) => {
      const { verdict } = lookAt({ ...told, date: TODAY });
      if (verdict.id === 'act') expect(verdict.courses.length).toBeGreaterThan(0);
      if (verdict.id === 'leave' || verdict.id === 'watch') expect(verdict.courses).toEqual([]);
      if (verdict.id === 'check') expect(CHECKS.map(({ id }): string => id)).toContain(verdict.check?.id);
      else expect(verdict.check).toBeUndefined();
    },
  );

  it('a check that takes days is dated by the day it can be read', () => {
    const { verdict } = lookAt({
      crop: 'tomato',
      date: TODAY,
      setting: { 'compost-kinds': ['horse-manure'], 'hay-source': 'yes' },
      seen: 'cupped-up@new twisted-narrow@new same-compost-only whole-bed several-kinds',
      absent: 'aphids',
    });
    expect(verdict.check).toMatchObject({ id: 'pot-test', waitDays: 21 });
    expect(verdict.lookAgain).toBe('2026-07-22');
  });
});

/** Chances of every cause, in the order of the model. */
function chancesOf(told: Told): Float64Array {
  const { p } = lookAt(told);
  return Float64Array.from(knowledgeModel().causes, ({ id }) => p(id));
}

const NO_FACTS: Facts = new Set();

describe('the two lopsided losses act (design)', () => {
  const CURLED: Told = { crop: 'potato', date: TODAY, seen: 'cupped-up@new small-leaves@new' };

  it('residue: priced like any other trouble of the same chance, leaving it would cost less than half', () => {
    const chances = chancesOf(CURLED);
    const at = knowledgeModel().causes.findIndex(({ id }) => id === 'residue-in-compost');
    const table = decisionTable(knowledgeModel(), NO_FACTS);
    const drift = knowledgeModel().causes.findIndex(({ id }) => id === 'spray-drift');
    const like = (values: Float64Array): Float64Array =>
      values.map((value, cause) => (cause === at ? values[drift]! : value));
    const ordinary: DecisionTable = {
      ...table,
      leave: like(table.leave),
      watch: like(table.watch),
      courses: table.courses.map((course) => ({ ...course, remains: like(course.remains) })),
    };
    const loss = (under: DecisionTable): number =>
      under.leave.reduce((sum, value, cause) => sum + value * chances[cause]!, 0);
    expect(loss(table)).toBeGreaterThan(2 * loss(ordinary));
    expect(bestPlan(ordinary, chances).plan.kind).toBe('watch');
    expect(['check', 'act']).toContain(lookAt(CURLED).verdict.id);
  });

  it('acting: were it free, one would spray and feed against a greenfly colony that the hunters already hold', () => {
    const held: Told = { crop: 'broad-bean', date: TODAY, seen: 'aphids yellow-even@old' };
    const chances = chancesOf(held);
    const table = decisionTable(knowledgeModel(), NO_FACTS);
    const free: DecisionTable = {
      ...table,
      courses: table.courses.map((course) => ({ ...course, needless: 0 })),
    };
    expect(bestPlan(free, chances).plan.kind).toBe('act');
    expect(bestPlan(table, chances).plan.kind).not.toBe('act');
  });

  it.each(COURSES.map(({ id, needless }) => ({ id, needless })))(
    'acting: $id against the colour of a variety costs more than leaving it',
    ({ id }) => {
      const told: Told = {
        crop: 'courgette',
        date: TODAY,
        setting: { 'variety-colour': 'yellow-or-golden' },
        seen: 'whole-colour-golden@all variety-only',
        absent: 'stunted',
      };
      const chances = chancesOf(told);
      const table = decisionTable(knowledgeModel(), NO_FACTS);
      const { needless, remains } = table.courses.find((course) => course.id === id)!;
      const acting = table.watchCost + needless + remains.reduce((sum, r, c) => sum + r * chances[c]!, 0);
      const leaving = table.leave.reduce((sum, loss, c) => sum + loss * chances[c]!, 0);
      expect(acting).toBeGreaterThan(leaving);
      expect(lookAt(told).verdict.id).toBe('leave');
    },
  );
});

describe('what is worth finding out', () => {
  /** Trade fact L7 (Raiffa 1968; HUGIN-OIL, SAS-DTREE): three states of the ground, and a seismic test. */
  const PRIOR = [0.5, 0.3, 0.2] as const;
  const DRILL: DecisionTable = {
    leave: new Float64Array(3),
    watch: Float64Array.of(1000, 1000, 1000),
    watchCost: 0,
    courses: [{ id: 'drill', needless: 0, remains: Float64Array.of(70, -50, -200) }],
  };
  const answers = [
    [0.1, 0.3, 0.5],
    [0.3, 0.4, 0.4],
    [0.6, 0.3, 0.1],
  ].map((given) => {
    const joint = PRIOR.map((p, state) => p * given[state]!);
    const chance = joint.reduce((a, b) => a + b, 0);
    return { chance, chances: Float64Array.from(joint, (p) => p / chance), table: DRILL };
  });

  it('L7 the seismic test is worth its price of 10 and refused at 13, though it tells 0.160411 bit all the same', () => {
    const worth = valueOfAnswers(bestPlan(DRILL, Float64Array.from(PRIOR)).plan, answers);
    expect(worth).toBeCloseTo(12.5, 10);
    expect(worth - 10).toBeGreaterThan(0);
    expect(worth - 13).toBeLessThan(0);
    const bits = answers.reduce(
      (sum, { chance, chances }) =>
        sum + chances.reduce((inner, p, state) => inner + chance * p * Math.log2(p / PRIOR[state]!), 0),
      0,
    );
    expect(bits).toBeCloseTo(0.160411, 6);
  });

  const STORY = [
    'compost-kinds',
    'wood-in-root-zone',
    'weeks-since-mixed-in',
    'hay-source',
    'recent-temperature',
  ] as const;

  it.each(PLANTS)(
    '%s: what is offered is worth its minutes and may turn the verdict, or belongs to the story; what tells much but changes nothing is not',
    (_, told) => {
      const { nextChecks, openQuestions } = lookAt({ ...told, date: TODAY });
      const stories: readonly string[] = STORY;
      for (const { id, gain, minutes, waitDays, target, turns } of nextChecks) {
        if (stories.includes(id)) continue;
        const isCheck = target.kind === 'check';
        const price =
          minutes * EFFORT.perMinute + waitDays * EFFORT.perDayWaited + (isCheck ? EFFORT.perCheck : 0);
        expect(gain, id).toBeGreaterThan(price);
        expect(turns, id).toBeGreaterThanOrEqual(0.03);
      }
      const offered = new Set(nextChecks.map(({ id }) => id));
      for (const { id, gain } of openQuestions)
        if (gain < 1e-9 && !stories.includes(id)) expect(offered.has(id), id).toBe(false);
    },
  );

  it('of a plant that is settled and left alone hardly anything is asked any more', () => {
    for (const [name, told] of LEFT) {
      const { verdict, nextChecks } = lookAt({ ...told, date: TODAY });
      expect(verdict.id, name).toBe('leave');
      expect(nextChecks.length, name).toBeLessThanOrEqual(6);
    }
  });

  it('what went on the bed, wood in it, and the nights are asked before anything else where a plant is pale or small', () => {
    const pale: Told = { crop: 'kale', date: TODAY, seen: 'yellow-even@old stunted' };
    const first = (told: Told): string | undefined => lookAt(told).nextChecks[0]?.id;
    expect(first(pale)).toBe('compost-kinds');
    const fed = tell(pale, { setting: { 'compost-kinds': ['own-compost'] } });
    expect(first(fed)).toBe('wood-in-root-zone');
    const wood = tell(fed, { setting: { 'wood-in-root-zone': true } });
    expect(first(wood)).toBe('weeks-since-mixed-in');
    expect(lookAt(pale).nextChecks.map(({ id }) => id)).toContain('recent-temperature');
    expect(first({ crop: 'tomato', date: TODAY, seen: 'cupped-up@new' })).toBe('compost-kinds');
    const manured: Told = {
      crop: 'tomato',
      date: TODAY,
      seen: 'cupped-up@new',
      setting: { 'compost-kinds': ['horse-manure'] },
    };
    expect(first(manured)).toBe('hay-source');
  });

  it('lock-up is not fed like a plain shortage: little and often, and nothing more is mixed in', () => {
    const poor = 'yellow-even@all stunted small-leaves@new whole-bed oldest-first';
    const courses = (setting: Told['setting'] & object): readonly string[] =>
      lookAt({ crop: 'kale', date: TODAY, seen: poor, setting }).verdict.courses;
    expect(courses({ 'compost-kinds': ['none'], 'wood-in-root-zone': true })).toContain('feed-while-it-rots');
    const hungry = courses({ 'compost-kinds': ['none'], 'wood-in-root-zone': false, feed: 'none' });
    expect(hungry).toContain('quick-nitrogen');
    expect(hungry).not.toContain('feed-while-it-rots');
  });

  it('a plant is not lifted before something cheaper was asked, unless several are poor', () => {
    const poor: Told = { crop: 'kale', date: TODAY, seen: 'stunted yellow-even@old' };
    const placeOf = (told: Told): number =>
      lookAt(told).openQuestions.findIndex(({ id }) => id === 'lift-plant');
    expect(lookAt(poor).verdict.check?.id).not.toBe('lift-plant');
    expect(placeOf(poor)).toBeGreaterThan(10);
    expect(placeOf(tell(poor, { seen: 'scattered' }))).toBeLessThan(placeOf(poor));
  });

  it('asking stops when no check is worth its minutes: the colour of a variety is settled', () => {
    const { nextChecks, openQuestions, verdict } = lookAt({
      crop: 'courgette',
      date: TODAY,
      setting: { 'variety-colour': 'yellow-or-golden' },
      seen: 'whole-colour-golden@all variety-only whole-bed always-so',
      absent: 'stunted white-powder@old whitefly',
    });
    expect(verdict.id).toBe('leave');
    expect(nextChecks.filter(({ target }) => target.kind === 'check')).toEqual([]);
    expect(openQuestions.some(({ bits }) => bits > 0.01)).toBe(true);
  });
});

const LEFT: readonly (readonly [string, Told])[] = [
  [
    'one yellow lowest leaf (AZ-MG-DEFINE)',
    {
      crop: 'kale',
      setting: { 'crop-stage': 'growing' },
      seen: 'yellow-even@old new-growth-clean oldest-first',
      absent: 'stunted spreading brown-spots@old yellow-even@new',
    },
  ],
  [
    'celery pale by nature, all plants alike (BI-CELERY)',
    {
      crop: 'celery',
      setting: { 'variety-colour': 'pale-or-self-blanching' },
      seen: 'yellow-even@all whole-bed variety-only always-so',
      absent: 'stunted',
    },
  ],
  [
    'greenfly with ladybird larvae (UMASS-0627)',
    { crop: 'broad-bean', seen: 'aphids aphid-hunters', absent: 'stunted' },
  ],
  [
    'greenfly with ladybird larvae on curled tips (UMASS-0627)',
    { crop: 'french-bean', seen: 'aphids aphid-hunters puckered@new sticky-sooty' },
  ],
  [
    'leaf roll (UMAN-ROLL)',
    {
      crop: 'tomato',
      seen: 'cupped-up@old thickened@old new-growth-clean',
      absent: 'twisted-narrow@new cupped-up@new aphids',
    },
  ],
  [
    'oedema (GP-EDEMA)',
    {
      crop: 'pepper',
      setting: { place: 'under-cover' },
      seen: 'blisters-under@old',
      absent: 'spreading aphids fine-webbing',
    },
  ],
  ['a mine in a beet leaf (USU-MINER)', { crop: 'beetroot', seen: 'pale-trails@old', absent: 'stunted' }],
  [
    'silver of the variety (CGC-GENES)',
    { crop: 'courgette', seen: 'silver-pattern@all whole-bed always-so', absent: 'white-powder@old stunted' },
  ],
  [
    'flea beetle on a grown plant (KY-FLEA)',
    { crop: 'kale', setting: { 'crop-stage': 'growing' }, seen: 'shot-holes@old jumping-beetles' },
  ],
  [
    'pigeons in summer (common practice, no source)',
    { crop: 'kale', seen: 'veins-left@old torn-cut birds-seen', absent: 'slime' },
  ],
  [
    'a climbing bean whose tip a rabbit took (common practice, no source)',
    { crop: 'runner-bean', seen: 'tip-eaten clean-cut mammal-signs' },
  ],
];

describe('K12 what is left alone', () => {
  it.each(LEFT)('%s: leave it', (_, told) => {
    const { verdict } = lookAt({ ...told, date: TODAY });
    expect(verdict.id).toBe('leave');
    expect(verdict.courses).toEqual([]);
  });

  it('a purple tint in cold soil is at most looked at again, and never fed (UMD-P)', () => {
    const { verdict } = lookAt({
      crop: 'tomato',
      date: '2026-05-05',
      setting: { 'recent-temperature': 'cold-for-crop' },
      seen: 'purple-tint@old after-cold new-growth-clean whole-bed',
      absent: 'spreading',
    });
    expect(['leave', 'watch']).toContain(verdict.id);
    expect(verdict.courses).toEqual([]);
  });
});

describe('K13 what cannot wait takes minutes to check or is done now', () => {
  const URGENT: readonly (readonly [string, Told, string])[] = [
    [
      'late blight (HTT-BLIGHT)',
      {
        crop: 'potato',
        setting: { 'recent-rain': 'wet' },
        seen: 'spreading-blotches@all grey-mould-under@old spreading',
      },
      'clear-at-once',
    ],
    [
      'plants with mosaic (OSU-TOMV)',
      { crop: 'courgette', seen: 'mottled@all puckered@new stunted scattered fruit-misshapen' },
      'remove-plants',
    ],
    [
      'manure under suspicion (NCSU-CARRY)',
      {
        crop: 'tomato',
        setting: { 'compost-kinds': ['horse-manure'], 'hay-source': 'unknown' },
        seen: 'cupped-up@new twisted-narrow@new',
        absent: 'aphids',
      },
      'stop-the-load',
    ],
    [
      'maggots at the root (CCE-CRF)',
      { crop: 'cabbage', seen: 'wilts-wet-soil maggots-at-root roots-eaten' },
      'guard-roots',
    ],
    [
      'waterlogging (PURDUE-WL)',
      {
        crop: 'tomato',
        setting: { 'soil-water': 'waterlogged', 'recent-rain': 'wet' },
        seen: 'wilts-wet-soil yellow-even@old after-rain',
      },
      'let-dry',
    ],
  ];

  it.each(URGENT)('%s', (_, told, course) => {
    const { verdict } = lookAt({ ...told, date: TODAY });
    expect(['act', 'check']).toContain(verdict.id);
    expect(verdict.courses).toContain(course);
    if (verdict.check) {
      expect(verdict.check.minutes).toBeLessThanOrEqual(10);
      expect(verdict.check.waitDays).toBe(0);
    }
  });

  it('spray drift is looked at again, with what to keep and whom to tell: nothing takes back the dose (NCSU-PDIC)', () => {
    for (const told of [
      { crop: 'tomato', seen: 'twisted-narrow@new cupped-down@new' },
      { crop: 'tomato', seen: 'twisted-narrow@new after-spray one-end' },
    ] as const) {
      const { verdict, p } = lookAt({ ...told, date: TODAY });
      expect(p('spray-drift')).toBeGreaterThan(0.2);
      expect(verdict.courses).not.toContain('shelter');
      expect(verdict.cautions).toContain('drift');
    }
    const drift: Told = { crop: 'tomato', date: TODAY, seen: 'twisted-narrow@new after-spray one-end' };
    expect(lookAt(drift).verdict.id).toBe('watch');
  });

  it('what leads at 1 in 7 brings no alarm; what is likely or acted on does', () => {
    const small = lookAt({ crop: 'french-bean', date: TODAY, seen: 'stunted' });
    expect(small.first).toBe('residue-in-compost');
    expect(small.p('residue-in-compost')).toBeLessThan(0.2);
    expect(small.verdict.cautions).not.toContain('residue');
    const curled = lookAt({ crop: 'french-bean', date: TODAY, seen: 'cupped-up@new' });
    expect(curled.p('residue-in-compost')).toBeGreaterThan(0.2);
    expect(curled.verdict.cautions).toContain('residue');
  });

  it('waiting a fortnight costs far more than acting in each of them', () => {
    for (const [name, told] of URGENT) {
      const { act, watch } = lookAt({ ...told, date: TODAY }).verdict.because.expectedLoss;
      expect(act!, name).toBeLessThan(0.85 * watch!);
    }
  });

  it('a wilting brassica in moist soil is lifted before anything is done (LTG-CRF)', () => {
    const { verdict } = lookAt(
      tell(
        { crop: 'cabbage', seen: 'wilts-wet-soil dull-limp@old' },
        { date: TODAY, setting: { 'soil-water': 'moist' } },
      ),
    );
    expect(verdict.check?.id).toBe('lift-plant');
  });
});

/** What is lifted or cut down cannot be put back. */
describe('plants are not destroyed on a guess', () => {
  const DESTROYS: readonly string[] = ['guard-roots', 'remove-plants', 'clear-at-once'];
  const BY_DATE = ['2026-04-15', '2026-08-15'] as const;
  const STRIKING = [
    'dull-limp@some',
    'dull-limp@some holes@some',
    'dull-limp@some stunted',
    'dull-limp@some yellowing@some',
    'holes@some spotted@some',
    'spotted@some browning@some',
    'curled@some stunted',
  ];
  it.each(['kale', 'carrot', 'onion', 'potato', 'tomato'] as const)(
    '%s: what strikes at first sight never ends in lifting or cutting down',
    (crop) => {
      for (const date of BY_DATE)
        for (const seen of STRIKING) {
          const { verdict } = lookAt({ crop, date, seen });
          const done = verdict.id === 'act' ? verdict.courses : [];
          expect(
            done.filter((course) => DESTROYS.includes(course)),
            `${date} ${seen}`,
          ).toEqual([]);
        }
    },
  );

  it('a kale that hangs and is eaten is looked at where it stands; maggots found, one is lifted', () => {
    const kale: Told = { crop: 'kale', date: '2026-04-15', seen: 'holes@some dull-limp@some' };
    const moist = tell(kale, { setting: { 'soil-water': 'moist' } });
    for (const told of [kale, moist, { ...kale, seen: 'dull-limp@some' }]) {
      const { verdict } = lookAt(told);
      expect(verdict.id).toBe('check');
      const check = CHECKS.find(({ id }) => id === verdict.check?.id)!;
      expect(check).not.toHaveProperty('spends');
      expect(check.waitDays).toBe(0);
    }
    const found = lookAt(tell(moist, { seen: 'maggots-at-root' })).verdict;
    expect([found.id, found.courses[0]]).toEqual(['act', 'guard-roots']);
    // All that the likeliest cause can be looked for has been looked for: nothing is left to lift.
    const none = tell(moist, { absent: 'maggots-at-root roots-eaten grubs-in-soil stem-base-rot' });
    expect(lookAt(none).verdict.courses).not.toContain('guard-roots');
  });
});

describe('blackfly on broad beans', () => {
  const BLACKFLY: Told = { crop: 'broad-bean', date: '2026-05-15', seen: 'aphids' };
  it('are asked about for what to do: the hunters turn it to leaving alone', () => {
    const hunters = lookAt(BLACKFLY).nextChecks.find(({ id }) => id === 'aphid-hunters');
    expect(hunters?.turnsTo).toEqual(['leave']);
  });
  it('with hunters among them are left alone, and nothing more is asked', () => {
    const { verdict, nextChecks } = lookAt(tell(BLACKFLY, { seen: 'aphid-hunters' }));
    expect(verdict.id).toBe('leave');
    expect(nextChecks).toEqual([]);
  });
});
