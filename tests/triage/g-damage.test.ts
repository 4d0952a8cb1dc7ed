import { describe, expect, it } from 'vitest';
import type { CauseId, CropId } from '../../src/signs/vocabulary.ts';
import { lookAt, type Told, tell } from './look-at.ts';

describe('G. bites, holes and creatures', () => {
  it('G1 brassica torn to the ribs in winter, no slime, no droppings of caterpillars: pigeons (TGA-PIGEON, LECK, HW-PIGEON)', () => {
    const { first } = lookAt({
      crop: 'kale',
      date: '2026-01-20',
      seen: 'veins-left@old torn-cut',
      absent: 'slime droppings-pellets',
    });
    expect(first).toBe('birds');
  });

  it('common practice, no source: no pigeon eats under a net', () => {
    const { of, p } = lookAt({ crop: 'kale', setting: { netted: true }, seen: 'veins-left@old torn-cut' });
    expect(p('birds')).toBe(0);
    expect(of('birds').ruledOut).toBeDefined();
  });

  it('G2 a clean slanting cut low down: rabbits rather than birds (WMP-DEER, WCC)', () => {
    const { first, p } = lookAt({ crop: 'lettuce', seen: 'tip-eaten clean-cut', absent: 'slime' });
    expect(first).toBe('rabbits-deer');
    expect(p('rabbits-deer')).toBeGreaterThan(5 * p('birds'));
  });

  it('G2 torn ends with hoof marks: deer still (WMP-DEER, HCS)', () => {
    expect(lookAt({ crop: 'chard', seen: 'tip-eaten torn-cut mammal-signs' }).first).toBe('rabbits-deer');
  });

  it('G3 slime means slugs, pellets mean caterpillars (OSU-SLUG, UMASS-SLUG)', () => {
    const holes: Told = { crop: 'cabbage', seen: 'ragged-holes@old' };
    const slime = lookAt(tell(holes, { seen: 'slime', absent: 'droppings-pellets' }));
    const pellets = lookAt(tell(holes, { seen: 'droppings-pellets', absent: 'slime' }));
    expect(slime.first).toBe('slugs-snails');
    expect(pellets.first).toBe('caterpillars');
  });

  it('G3 wet weather multiplies slugs (OSU-SLUG)', () => {
    const eaten = (rain: 'wet' | 'dry') =>
      lookAt({ crop: 'lettuce', setting: { 'recent-rain': rain }, seen: 'ragged-holes@old' }).p(
        'slugs-snails',
      );
    expect(eaten('wet')).toBeGreaterThan(2 * eaten('dry'));
  });

  it.each(['rocket', 'aubergine'] as const)(
    'G4 tiny round holes on %s: flea beetle (RUT-FLEA, KY-FLEA)',
    (crop) => {
      expect(lookAt({ crop, seen: 'shot-holes@old shot-holes@new' }).first).toBe('flea-beetle');
    },
  );

  it('G5 trails inside a beet leaf: miner, and the root is not hurt (USU-MINER)', () => {
    const { first, verdict } = lookAt({
      crop: 'beetroot',
      date: '2026-07-05',
      seen: 'pale-trails@old brown-patches@old',
    });
    expect(first).toBe('leaf-miner');
    expect(verdict.id).not.toBe('act');
  });

  it('G6 mummies and ladybird larvae among the greenfly: wait a week (SDUT-UC, UMASS-0627, UDEL-8938)', () => {
    const { first, verdict } = lookAt({
      crop: 'broad-bean',
      date: '2026-06-01',
      seen: 'aphids aphid-hunters cast-skins',
    });
    expect(first).toBe('aphids');
    expect(['leave', 'watch']).toContain(verdict.id);
    expect(verdict.lookAgain).toBe('2026-06-08');
  });

  it('G6 ants and stickiness speak for aphids (SDUT-UC)', () => {
    const { p } = lookAt({ crop: 'pepper', seen: 'sticky-sooty ants' });
    expect(p('aphids')).toBeGreaterThan(lookAt({ crop: 'pepper' }).p('aphids') * 4);
  });

  it('G8 stippling with webbing in hot, dry weather: mite (MSU-COLE, GP-BEAN)', () => {
    const { first } = lookAt({
      crop: 'french-bean',
      setting: { 'recent-temperature': 'hot', 'recent-rain': 'dry' },
      seen: 'stippled@old fine-webbing',
    });
    expect(first).toBe('spider-mite');
  });

  it('G8 silver streaks with black specks and no webbing: thrips (MSU-COLE)', () => {
    const { first, p } = lookAt({ crop: 'leek', seen: 'silver-flecks@old thrips', absent: 'fine-webbing' });
    expect(first).toBe('thrips');
    expect(p('thrips')).toBeGreaterThan(10 * p('spider-mite'));
  });

  const WILTING: Told = {
    crop: 'cabbage',
    date: '2026-06-10',
    setting: { 'soil-water': 'moist' },
    seen: 'wilts-wet-soil dull-limp@old',
  };

  it('G9 a brassica that wilts in moist soil: lift one and look at the root (LTG-CRF, CCE-CRF)', () => {
    const { verdict } = lookAt(WILTING);
    expect(verdict.id).toBe('check');
    expect(verdict.check?.id).toBe('lift-plant');
  });

  it('G9 maggots at the root: root fly, and it is urgent (LTG-CRF, WHATCOM-MG)', () => {
    const { first, verdict } = lookAt(tell(WILTING, { seen: 'maggots-at-root roots-eaten' }));
    expect(first).toBe('root-feeders');
    expect(verdict.id).toBe('act');
  });

  it('G10 swollen roots: clubroot, more so on acid ground (from memory)', () => {
    const swollen = tell(WILTING, { seen: 'roots-swollen' });
    expect(lookAt(swollen).first).toBe('clubroot');
    const on = (reaction: 'acid' | 'chalky-or-limed') =>
      lookAt(tell(WILTING, { setting: { 'soil-ph': reaction } })).p('clubroot');
    expect(on('acid')).toBeGreaterThan(2 * on('chalky-or-limed'));
  });

  it('G11 pea tips pecked, birds about, no slime: birds (from memory)', () => {
    expect(
      lookAt({ crop: 'pea', date: '2026-04-10', seen: 'tip-eaten torn-cut birds-seen', absent: 'slime' })
        .first,
    ).toBe('birds');
  });

  it.each<[string, CropId, CauseId]>([
    ['aphids', 'cabbage', 'aphids'],
    ['whitefly', 'cabbage', 'whitefly'],
    ['jumping-beetles', 'cabbage', 'flea-beetle'],
    ['other-beetles', 'potato', 'leaf-beetles'],
    ['caterpillars', 'cabbage', 'caterpillars'],
    ['maggots-at-root', 'cabbage', 'root-feeders'],
    ['thrips', 'leek', 'thrips'],
    ['fine-webbing', 'cucumber', 'spider-mite'],
  ])('G12 %s plainly seen on %s outweighs a pale leaf: %s leads (ALCA, RUGG)', (sign, crop, cause) => {
    expect(lookAt({ crop, seen: `${sign} yellow-even@old` }).first).toBe(cause);
  });
});
