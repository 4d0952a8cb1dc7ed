import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { type CauseId, FAMILIES } from '../../src/signs/vocabulary.ts';
import { lookAt, type Told, tell } from './look-at.ts';

const LIVING: ReadonlySet<string> = new Set(['animals', 'disease']);
const NON_LIVING: ReadonlySet<string> = new Set(['food', 'ground', 'weather', 'weedkiller']);

function massOf(told: Told, families: ReadonlySet<string>): number {
  const { causes } = lookAt(told);
  return causes
    .filter(({ family }) => families.has(family))
    .reduce((sum, { probability }) => sum + probability, 0);
}

describe('K. good practice', () => {
  it('the families used here exist', () => {
    const known = FAMILIES.map(({ id }) => id as string);
    for (const family of [...LIVING, ...NON_LIVING]) expect(known).toContain(family);
  });

  it('K2 several unrelated crops, all alike: non-living causes gain (AZ-MG-SUM)', () => {
    const spots: Told = { crop: 'lettuce', seen: 'browning@some' };
    const uniform = tell(spots, { seen: 'several-kinds whole-bed' });
    expect(massOf(uniform, NON_LIVING)).toBeGreaterThan(massOf(spots, NON_LIVING));
    expect(massOf(uniform, LIVING)).toBeLessThan(massOf(spots, LIVING));
  });

  it('K2 scattered on one crop: living causes gain (AZ-MG-SUM)', () => {
    const spots: Told = { crop: 'lettuce', seen: 'browning@some' };
    const scattered = tell(spots, { seen: 'scattered', absent: 'several-kinds' });
    expect(massOf(scattered, LIVING)).toBeGreaterThan(massOf(spots, LIVING));
  });

  it('K3 spreading from plant to plant: living causes gain, its absence lowers them (AZ-MG-SUM)', () => {
    const spots: Told = { crop: 'lettuce', seen: 'browning@some' };
    const spreading = massOf(tell(spots, { seen: 'spreading' }), LIVING);
    expect(spreading).toBeGreaterThan(massOf(spots, LIVING) * 1.3);
    expect(massOf(tell(spots, { absent: 'spreading' }), LIVING)).toBeLessThan(massOf(spots, LIVING));
  });

  it('K4 leaving alone is weighed in every verdict, and every verdict has a date (DEMESNE)', () => {
    for (const seen of ['yellow-even@old', 'aphids', 'spreading-blotches@new', 'ragged-holes@some']) {
      const { verdict } = lookAt({ crop: 'tomato', date: '2026-07-01', seen });
      expect(verdict.because.expectedLoss.leave).toBeTypeOf('number');
      expect(verdict.lookAgain > '2026-07-01').toBe(true);
      expect(verdict.recovery[0]?.looksLike.length).toBeGreaterThan(10);
    }
  });

  it('K5 beetles on French beans: borne before bloom, not while the pods fill (UMD-BLB, ESA-2007)', () => {
    const eaten = (stage: 'growing' | 'fruiting') =>
      lookAt({
        crop: 'french-bean',
        date: '2026-07-05',
        setting: { 'crop-stage': stage },
        seen: 'other-beetles ragged-holes@old shot-holes@old',
      }).verdict;
    expect(['leave', 'watch']).toContain(eaten('growing').id);
    expect(eaten('fruiting').id).toBe('act');
    expect(eaten('fruiting').courses).toContain('pick-off-pests');
  });

  it('K6 soya beans bear more before they flower than with pods (OHIO-BLB)', () => {
    const lost = (stage: 'growing' | 'fruiting') =>
      lookAt({ crop: 'soya-bean', setting: { 'crop-stage': stage }, seen: 'other-beetles ragged-holes@old' })
        .verdict.because.expectedLoss.leave!;
    expect(lost('fruiting')).toBeGreaterThan(1.5 * lost('growing'));
  });

  it('K7 potatoes bear a fifth of their leaf lost before they flower, not at full flower, and all at the end (PSU-CPB, SHIELDS-1984, VA-CPB)', () => {
    const eaten = (stage: 'growing' | 'fruiting' | 'old') =>
      lookAt({
        crop: 'potato',
        date: '2026-07-01',
        setting: { 'crop-stage': stage },
        seen: 'other-beetles ragged-holes@old edge-bites@old',
      }).verdict;
    expect(['leave', 'watch']).toContain(eaten('growing').id);
    expect(eaten('fruiting').id).toBe('act');
    expect(['leave', 'watch']).toContain(eaten('old').id);
  });

  it('K8 in a nearly ripe head one plant in twenty is the point to act (RUTGERS-COLE)', () => {
    const { verdict } = lookAt({
      crop: 'cabbage',
      date: '2026-08-20',
      setting: { 'crop-stage': 'fruiting' },
      seen: 'caterpillars ragged-holes@old droppings-pellets',
    });
    expect(verdict.id).toBe('act');
  });

  it('K8 caterpillars: acting pays on seedlings, hardly between four leaves and the filling head (RUTGERS-COLE)', () => {
    const eaten = (stage: 'seedling' | 'growing') =>
      lookAt({ crop: 'cabbage', setting: { 'crop-stage': stage }, seen: 'caterpillars ragged-holes@old' })
        .verdict;
    const small = eaten('seedling').because.expectedLoss;
    const large = eaten('growing').because.expectedLoss;
    expect(['act', 'check']).toContain(eaten('seedling').id);
    expect(small.act!).toBeLessThan(small.leave! / 2);
    expect(small.act!).toBeLessThan(small.watch! / 1.5);
    expect(large.act!).toBeGreaterThan(large.watch!);
  });

  it('K9 greenfly on a small pea plant are acted on sooner than on a large one (UDEL-8938)', () => {
    const on = (stage: 'seedling' | 'growing') =>
      lookAt({ crop: 'pea', setting: { 'crop-stage': stage }, seen: 'aphids' }).verdict.because.expectedLoss
        .leave!;
    expect(on('seedling')).toBeGreaterThan(1.5 * on('growing'));
  });

  it('K10 flea beetle: a seedling is defended, a plant of more than five leaves is not (KY-FLEA)', () => {
    const holed = (stage: 'seedling' | 'growing') =>
      lookAt({ crop: 'rocket', setting: { 'crop-stage': stage }, seen: 'shot-holes@all jumping-beetles' })
        .verdict;
    const { id, because } = holed('seedling');
    expect(['act', 'check']).toContain(id);
    expect(because.expectedLoss.act!).toBeLessThan(because.expectedLoss.watch! / 1.5);
    expect(['leave', 'watch']).toContain(holed('growing').id);
  });
});

const HARMLESS: readonly (readonly [string, CauseId, Told])[] = [
  [
    'a few lowest leaves yellow (AZ-MG-DEFINE)',
    'old-leaves',
    {
      crop: 'tomato',
      date: '2026-08-20',
      setting: { 'crop-stage': 'fruiting' },
      seen: 'yellow-even@old new-growth-clean oldest-first',
      absent: 'stunted spreading brown-spots@old yellow-even@new',
    },
  ],
  [
    'leaf roll (UMAN-ROLL)',
    'leaf-roll',
    {
      crop: 'tomato',
      date: '2026-07-12',
      seen: 'cupped-up@old thickened@old new-growth-clean',
      absent: 'twisted-narrow@new cupped-up@new aphids',
    },
  ],
  [
    'oedema (GP-EDEMA)',
    'oedema',
    {
      crop: 'pepper',
      date: '2026-05-01',
      setting: { place: 'under-cover' },
      seen: 'blisters-under@old',
      absent: 'spreading aphids fine-webbing',
    },
  ],
  [
    'a miner where the root is wanted (USU-MINER)',
    'leaf-miner',
    {
      crop: 'beetroot',
      date: '2026-07-10',
      seen: 'pale-trails@old',
      absent: 'stunted',
    },
  ],
  [
    'greenfly with mummies (UMASS-0627)',
    'aphids',
    {
      crop: 'broad-bean',
      date: '2026-06-10',
      seen: 'aphids aphid-hunters',
      absent: 'stunted',
    },
  ],
  [
    'purple in cold soil (UMD-P)',
    'cold-check',
    {
      crop: 'tomato',
      date: '2026-05-05',
      setting: { 'recent-temperature': 'cold-for-crop' },
      seen: 'purple-tint@old after-cold new-growth-clean whole-bed',
      absent: 'spreading',
    },
  ],
  [
    'silver of the variety (CGC-GENES)',
    'variety-colour',
    {
      crop: 'courgette',
      date: '2026-07-15',
      seen: 'silver-pattern@all whole-bed always-so',
      absent: 'white-powder@old stunted',
    },
  ],
  [
    'gold of the variety (CGC-LIETZOW)',
    'variety-colour',
    {
      crop: 'courgette',
      date: '2026-07-15',
      setting: { 'variety-colour': 'yellow-or-golden' },
      seen: 'whole-colour-golden@all variety-only',
      absent: 'stunted',
    },
  ],
  [
    'flea beetle on a plant of more than five leaves (KY-FLEA)',
    'flea-beetle',
    {
      crop: 'kale',
      date: '2026-07-10',
      setting: { 'crop-stage': 'growing' },
      seen: 'shot-holes@old jumping-beetles',
      absent: 'stunted',
    },
  ],
];

describe('K12 what is left alone ends in leave or watch, with a date', () => {
  it.each(HARMLESS)('%s', (_, cause, told) => {
    const { first, verdict } = lookAt(told);
    expect(first).toBe(cause);
    expect(['leave', 'watch']).toContain(verdict.id);
    expect(verdict.courses).toEqual([]);
    expect(verdict.lookAgain > told.date!).toBe(true);
  });
});

const URGENT: readonly (readonly [string, CauseId, readonly string[], Told])[] = [
  [
    'late blight (HTT-BLIGHT)',
    'blight',
    ['act'],
    {
      crop: 'potato',
      date: '2026-07-25',
      setting: { 'recent-rain': 'wet' },
      seen: 'spreading-blotches@all grey-mould-under@old spreading',
    },
  ],
  [
    'plants with mosaic (OSU-TOMV)',
    'virus',
    ['act'],
    {
      crop: 'courgette',
      date: '2026-07-01',
      seen: 'mottled@all puckered@new stunted scattered fruit-misshapen',
    },
  ],
  [
    'manure under suspicion (NCSU-CARRY)',
    'residue-in-compost',
    ['check', 'act'],
    {
      crop: 'tomato',
      date: '2026-06-10',
      setting: { 'compost-kinds': ['horse-manure'], 'hay-source': 'unknown' },
      seen: 'cupped-up@new twisted-narrow@new same-compost-only',
      absent: 'aphids',
    },
  ],
  [
    'root maggots (CCE-CRF)',
    'root-feeders',
    ['act'],
    {
      crop: 'cabbage',
      date: '2026-05-25',
      seen: 'wilts-wet-soil maggots-at-root roots-eaten',
    },
  ],
  [
    'waterlogging (PURDUE-WL)',
    'wet-roots',
    ['act', 'check'],
    {
      crop: 'tomato',
      date: '2026-06-05',
      setting: { 'soil-water': 'waterlogged', 'recent-rain': 'wet' },
      seen: 'wilts-wet-soil yellow-even@old after-rain dull-limp@old',
    },
  ],
];

describe('K13 what cannot wait', () => {
  it.each(URGENT)('%s', (_, cause, verdicts, told) => {
    const { first, verdict } = lookAt(told);
    expect(first).toBe(cause);
    expect(verdicts).toContain(verdict.id);
  });
});

describe('both lopsided losses act', () => {
  it('residue: curled new leaves alone already forbid leaving it, on every crop that shows it first', () => {
    for (const crop of ['tomato', 'french-bean', 'potato', 'pea', 'broad-bean'] as const) {
      const { p, verdict } = lookAt({ crop, seen: 'cupped-up@new' });
      expect(p('residue-in-compost')).toBeGreaterThan(0.1);
      expect(['check', 'act']).toContain(verdict.id);
    }
  });

  it('residue stays a check, the load stopped meanwhile, until the pots have been read (OSU-CARRY)', () => {
    const suspected: Told = {
      crop: 'tomato',
      date: '2026-06-10',
      setting: { 'compost-kinds': ['horse-manure'], 'hay-source': 'yes' },
      seen: 'cupped-up@new twisted-narrow@new same-compost-only whole-bed several-kinds',
      absent: 'aphids',
    };
    const { verdict, p } = lookAt(suspected);
    expect(p('residue-in-compost')).toBeGreaterThan(0.9);
    expect(verdict.id).toBe('check');
    expect(verdict.check?.id).toBe('pot-test');
    expect(verdict.courses).toContain('stop-the-load');
    expect(verdict.lookAgain).toBe('2026-07-01');
    const proven = lookAt(tell(suspected, { seen: 'pot-test-injury' })).verdict;
    expect(proven.id).toBe('act');
    expect(proven.courses).toContain('stop-the-load');
    const cleared = lookAt(tell(suspected, { absent: 'pot-test-injury' }));
    expect(cleared.p('residue-in-compost')).toBeLessThan(p('residue-in-compost'));
  });

  it('harmless: no course helps, and every one of them costs more than looking again', () => {
    for (const [, , told] of HARMLESS) {
      const { expectedLoss } = lookAt(told).verdict.because;
      expect(expectedLoss.act!).toBeGreaterThan(Math.min(expectedLoss.leave!, expectedLoss.watch!));
    }
  });

  it('normal causes offer no remedy at all', () => {
    for (const { id, family } of lookAt({}).causes) {
      if (family === 'normal') expect(KNOWLEDGE.find((cause) => cause.id === id)!.remedies).toEqual([]);
    }
  });
});
