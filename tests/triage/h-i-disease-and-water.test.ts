import { describe, expect, it } from 'vitest';
import { lookAt, type Told, tell } from './look-at.ts';

describe('H. diseases often confused', () => {
  it('H1 ringed spots climbing slowly from old leaves: leaf spot, not late blight (QCT-ILL)', () => {
    const { first, p } = lookAt({
      crop: 'tomato',
      seen: 'brown-spots@old ringed-spots@old haloed-spots@old oldest-first',
    });
    expect(first).toBe('leaf-spot');
    expect(p('leaf-spot')).toBeGreaterThan(5 * p('blight'));
  });

  it('H1 wet blotches, white fuzz beneath, very fast: late blight, act at once (HTT-BLIGHT)', () => {
    const { first, verdict } = lookAt({
      crop: 'potato',
      date: '2026-07-25',
      setting: { 'recent-rain': 'wet' },
      seen: 'spreading-blotches@old spreading-blotches@new grey-mould-under@old spreading sudden',
      absent: 'ringed-spots@old',
    });
    expect(first).toBe('blight');
    expect(verdict.id).toBe('act');
  });

  it('H2 late blight needs warm wet weather: rain raises it, drought lowers it (AHDB-HUTTON)', () => {
    const after = { crop: 'potato', date: '2026-07-25', seen: 'brown-patches@old' } as const;
    const blight = (rain: 'wet' | 'dry') =>
      lookAt({ ...after, setting: { 'recent-rain': rain } }).p('blight');
    expect(blight('wet')).toBeGreaterThan(4 * blight('dry'));
  });

  it('H3 yellow patches with down beneath: downy, white powder on top: powdery (UCONN-MILD, OSU-CDM, ILL-CDM)', () => {
    const on = (seen: string) => lookAt({ crop: 'cucumber', date: '2026-08-10', seen }).first;
    expect(on('yellow-patches@old grey-mould-under@old')).toBe('downy-mildew');
    expect(on('white-powder@old')).toBe('powdery-mildew');
  });

  it('H4 one side yellow and brown vessels: wilt disease (UC-FUS, ROYAN, DOC-FV)', () => {
    const { first, p } = lookAt({ crop: 'tomato', seen: 'wilts-one-side yellow-even@old pith-brown' });
    expect(first).toBe('wilt-disease');
    expect(p('wilt-disease')).toBeGreaterThan(0.9);
  });

  it('H4 a wilting tomato in moist soil: cutting a stem is among the open checks, and tells (UC-FUS)', () => {
    const wilting: Told = { crop: 'tomato', seen: 'wilts-wet-soil dull-limp@old' };
    expect(lookAt(wilting).openQuestions.map(({ id }) => id)).toContain('cut-stem');
    const clean = lookAt(tell(wilting, { absent: 'pith-brown' })).p('wilt-disease');
    const brown = lookAt(tell(wilting, { seen: 'pith-brown' })).p('wilt-disease');
    expect(brown).toBeGreaterThan(5 * clean);
  });

  it('H4 warm weather speaks for a wilt of the vessels (UC-FUS)', () => {
    const hanging: Told = { crop: 'tomato', seen: 'wilts-one-side yellow-edges@old' };
    const at = (weather: 'hot' | 'about-right') =>
      lookAt(tell(hanging, { setting: { 'recent-temperature': weather } })).p('wilt-disease');
    expect(at('hot')).toBeGreaterThan(at('about-right'));
    expect(at('about-right')).toBeGreaterThan(0.3);
  });

  it('H5 the dust of rust comes off on a finger; what does not rub off is another spot (CSU-2936)', () => {
    const spots: Told = { crop: 'leek', seen: 'spotted@old' };
    expect(lookAt(tell(spots, { seen: 'rust-pustules@old' })).first).toBe('rust');
    expect(lookAt(tell(spots, { absent: 'rust-pustules@old rust-pustules@new' })).p('rust')).toBeLessThan(
      lookAt(spots).p('rust') / 3,
    );
  });

  it('H6 spots without rings keep leaf spot alive: the bacterial ones have none (PRGDB)', () => {
    const spots: Told = { crop: 'tomato', seen: 'brown-spots@old haloed-spots@old after-rain' };
    const { first, p } = lookAt(tell(spots, { absent: 'ringed-spots@old ringed-spots@new' }));
    expect(first).toBe('leaf-spot');
    expect(p('leaf-spot')).toBeGreaterThan(0.6 * lookAt(spots).p('leaf-spot'));
  });

  it('H7 mottle, narrow leaves, plant to plant: virus, and the plants come out (OMAFRA-V, UCONN-TMV, OSU-TOMV)', () => {
    const { first, verdict } = lookAt({
      crop: 'tomato',
      date: '2026-07-05',
      seen: 'mottled@new twisted-narrow@new stunted spreading scattered fruit-misshapen',
      absent: 'same-compost-only',
    });
    expect(first).toBe('virus');
    expect(verdict.id).toBe('act');
    expect(verdict.courses).toContain('remove-plants');
  });

  it('H8 corky bumps, nothing spreads: oedema, left alone (GP-EDEMA, UMD-EDEMA)', () => {
    const { first, verdict } = lookAt({
      crop: 'tomato',
      date: '2026-04-25',
      setting: { place: 'under-cover', light: 'dull' },
      seen: 'blisters-under@old',
      absent: 'spreading aphids',
    });
    expect(first).toBe('oedema');
    expect(['leave', 'watch']).toContain(verdict.id);
  });
});

describe('I. water, salts, sun, wind', () => {
  it('I1 tomato hangs after a day under water, broccoli later, aubergine not at all (PURDUE-WL3)', () => {
    const on = (crop: 'tomato' | 'broccoli' | 'aubergine') =>
      lookAt({ crop, setting: { 'soil-water': 'waterlogged' }, seen: 'dull-limp@old' }).p('wet-roots');
    expect(on('tomato')).toBeGreaterThan(on('broccoli'));
    expect(on('tomato')).toBeGreaterThan(on('aubergine'));
  });

  it('I2 wilting in wet soil is never answered by more water (PURDUE-WL, PURDUE-WVG)', () => {
    const { first, verdict } = lookAt({
      crop: 'tomato',
      setting: { 'soil-water': 'waterlogged', 'recent-rain': 'wet' },
      seen: 'wilts-wet-soil dull-limp@old yellow-even@old after-rain',
    });
    expect(first).toBe('wet-roots');
    expect(verdict.courses).not.toContain('water-deeply');
  });

  it('I3 limp leaves: how wet the soil is parts drought from drowned roots (MGP-DIAG)', () => {
    const limp: Told = { crop: 'courgette', seen: 'dull-limp@old' };
    const soil = (water: 'dry' | 'waterlogged') => lookAt(tell(limp, { setting: { 'soil-water': water } }));
    expect(soil('dry').first).toBe('drought');
    expect(soil('waterlogged').first).toBe('wet-roots');
  });

  it('I3 limp leaves: a finger in the soil is the first check by hand (MGP-DIAG)', () => {
    const { openQuestions } = lookAt({ crop: 'courgette', seen: 'dull-limp@old dull-limp@new' });
    const checks = openQuestions.filter(({ target }) => target.kind === 'check');
    expect(checks[0]?.id).toBe('finger-in-soil');
  });

  it('I3 brown dry edges: drought or too much feed, by what was done (MGP-DIAG)', () => {
    const edges: Told = { crop: 'pepper', seen: 'brown-edges@old' };
    const fed = lookAt(tell(edges, { setting: { feed: 'heavy', 'soil-water': 'moist' } }));
    const dry = lookAt(tell(edges, { setting: { feed: 'none', 'soil-water': 'dry' } }));
    expect(fed.p('salt-burn')).toBeGreaterThan(fed.p('drought'));
    expect(dry.p('drought')).toBeGreaterThan(dry.p('salt-burn'));
  });

  it('I4 the same strong feed hurts beans and onions before beetroot and courgette (USSL-MAAS)', () => {
    const on = (crop: 'french-bean' | 'onion' | 'beetroot' | 'courgette') =>
      lookAt({ crop, setting: { feed: 'heavy' }, seen: 'brown-edges@old' }).p('salt-burn');
    for (const tender of ['french-bean', 'onion'] as const)
      for (const tough of ['beetroot', 'courgette'] as const) expect(on(tender)).toBeGreaterThan(on(tough));
  });

  it('I6 bleached patches after sudden sun: scorch; brown on the windward side after a gale: wind (from memory)', () => {
    expect(lookAt({ crop: 'tomato', seen: 'bleached-patches@new after-hot-sun sudden' }).first).toBe(
      'sun-scorch',
    );
    expect(lookAt({ crop: 'runner-bean', seen: 'brown-edges@new one-end after-wind' }).first).toBe(
      'wind-batter',
    );
  });

  it('I7 up to a week after planting out raises the check of planting, three weeks remove it (UMAN-ROLL)', () => {
    const planted = (days: number) =>
      lookAt({
        crop: 'cabbage',
        setting: { 'days-since-planting': days },
        seen: 'dull-limp@old yellow-even@old',
      }).p('planting-check');
    expect(planted(5)).toBeGreaterThan(2 * planted(15));
    expect(planted(30)).toBeLessThan(planted(5) / 10);
  });
});
