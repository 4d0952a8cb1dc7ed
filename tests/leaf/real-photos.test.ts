/**
 * Reading real photographs. They are optional (`../shared/photos`): everything here skips without them. Samples are small,
 * so bounds lie below what the whole sets give; `src/leaf/README.md` has those figures.
 */
import sharp from 'sharp';
import { beforeAll, describe, expect, it } from 'vitest';
import type { MeasureId } from '../../src/leaf/measures.ts';
import { readLeaf } from '../../src/leaf/read-leaf.ts';
import type { LeafAnalysis } from '../../src/leaf/types.ts';
import {
  areaUnderCurve,
  decodePhoto,
  HAS_PHOTOS,
  medianOf,
  overlapOf,
  type PhotoRow,
  photoBytes,
  pickPhotos,
  rankCorrelation,
} from './shared-photos.ts';

const read = async (row: PhotoRow): Promise<LeafAnalysis> =>
  readLeaf(await decodePhoto(row.file), { role: 'old' });
const takenOf = (analysis: LeafAnalysis, id: MeasureId): number[] => {
  const value = analysis.reading.measures[id]?.value;
  return value === undefined ? [] : [value];
};

describe.skipIf(!HAS_PHOTOS)('chewed soybean leaflets with masks (soybean-holes)', () => {
  it('outlines the tissue that is left and measures the loss', async () => {
    const overlaps: number[] = [];
    const misses: number[] = [];
    const withinTwo: boolean[] = [];
    for (const row of pickPhotos('soybean-holes', 'damaged', 20)) {
      const analysis = await read(row);
      const maskFile = row.file.replace('/images/', '/mask_remaining/').replace('.jpg', '.png');
      const truth = await sharp(photoBytes(maskFile)).greyscale().raw().toBuffer();
      overlaps.push(overlapOf(analysis.mask!.data, truth));
      const lost = analysis.reading.measures['lost-fraction'];
      if (lost === undefined) continue;
      const miss = Math.abs(lost.value - Number(row.note.split('=')[1]));
      misses.push(miss);
      withinTwo.push(miss < 2 * lost.se);
    }
    expect(medianOf(overlaps)).toBeGreaterThan(0.985);
    expect(Math.min(...overlaps)).toBeGreaterThan(0.9);
    expect(misses.length).toBeGreaterThan(15);
    expect(misses.reduce((s, v) => s + v, 0) / misses.length).toBeLessThan(0.01);
    expect(withinTwo.filter(Boolean).length / withinTwo.length).toBeGreaterThan(0.8);
  });
});

describe.skipIf(!HAS_PHOTOS)('papaya leaves under a chlorophyll meter (papaya-spad)', () => {
  const spadOf = (row: PhotoRow): number => Number(row.note.split('=')[1]);
  const rows = (ground: string): PhotoRow[] =>
    ['golden', 'tainung'].flatMap((kind) => pickPhotos('papaya-spad', `${kind}_${ground}_bg`, 10));

  it.each([
    ['white', 0.78],
    ['natural', 0.7],
  ])('hue and dark green follow the meter on a %s ground', async (ground, least) => {
    const picked = rows(ground);
    const readings = await Promise.all(picked.map(read));
    const spads = picked.map(spadOf);
    const correlation = (id: 'hue' | 'dark-green-index'): number =>
      rankCorrelation(
        readings.map((analysis) => takenOf(analysis, id)[0]!),
        spads,
      );
    // Measured 0.83 (white) on these twenty; the plain median index of a colour threshold reaches 0.93 on the whole
    // set: the measure falls short of the photographs there and is to be improved.
    expect(correlation('dark-green-index'), 'dark-green-index').toBeGreaterThan(least);
    expect(correlation('hue'), 'hue').toBeGreaterThan(0.7);
    const chlorotic = readings.map((analysis) => takenOf(analysis, 'chlorotic-fraction')[0]!);
    expect(rankCorrelation(chlorotic, spads)).toBeLessThan(-0.6);
  });
});

describe.skipIf(!HAS_PHOTOS)('field photographs by label', () => {
  const labels = {
    chilliHealthy: ['chilli-india', 'healthy'],
    interveinal: ['chilli-india', 'nutritional'],
    cercospora: ['chilli-india', 'cercospora'],
    blackgramHealthy: ['blackgram-india', 'healthy'],
    mosaic: ['blackgram-india', 'yellow_mosaic'],
    anthracnose: ['blackgram-india', 'anthracnose'],
    beanHealthy: ['bean-uganda', 'healthy'],
    angularSpot: ['bean-uganda', 'angular_leaf_spot'],
  } as const;
  const readings = new Map<string, LeafAnalysis[]>();

  beforeAll(async () => {
    for (const [name, [set, label]] of Object.entries(labels)) {
      const analyses: LeafAnalysis[] = [];
      for (const row of pickPhotos(set, label, 10)) analyses.push(await read(row));
      readings.set(name, analyses);
    }
  }, 120_000);

  const values = (id: MeasureId, ...names: (keyof typeof labels)[]): number[] =>
    names.flatMap((name) => readings.get(name)!.flatMap((analysis) => takenOf(analysis, id)));

  it('finds a leaf in nearly all of them', () => {
    const all = [...readings.values()].flat();
    const found = all.filter(({ reading }) => reading.leaf.found);
    expect(found.length / all.length).toBeGreaterThanOrEqual(0.97);
    expect(all.filter(({ reading }) => reading.trouble.includes('too-blurred')).length).toBeLessThanOrEqual(
      4,
    );
  });

  it('tells yellow between veins from healthy by vein contrast', () => {
    const auc = areaUnderCurve(
      values('vein-contrast', 'interveinal'),
      values('vein-contrast', 'chilliHealthy', 'blackgramHealthy'),
    );
    expect(auc).toBeGreaterThan(0.85);
  });

  it('tells mosaic from healthy by mottle', () => {
    expect(areaUnderCurve(values('mottle', 'mosaic'), values('mottle', 'blackgramHealthy'))).toBeGreaterThan(
      0.9,
    );
  });

  it.each([
    ['anthracnose', 'blackgramHealthy'],
    ['angularSpot', 'beanHealthy'],
    ['cercospora', 'chilliHealthy'],
  ] as const)('tells %s from %s by the share in spots', (sick, healthy) => {
    expect(areaUnderCurve(values('spot-fraction', sick), values('spot-fraction', healthy))).toBeGreaterThan(
      0.8,
    );
  });
});

describe.skipIf(!HAS_PHOTOS)('pictures of something else', () => {
  it('finds no leaf on any of them', async () => {
    const rows = pickPhotos('other', 'not_a_leaf', 99);
    expect(rows.length).toBe(5);
    for (const row of rows) {
      const { reading } = await read(row);
      expect(reading.leaf.found, row.file).toBe(false);
      expect(reading.trouble).toContain('no-leaf');
    }
  });

  it('reads pictures of many plants without falling over', async () => {
    for (const row of pickPhotos('other', 'plants', 99)) {
      const { reading } = await read(row);
      for (const { value, se } of Object.values(reading.measures)) {
        expect(Number.isFinite(value)).toBe(true);
        expect(se).toBeGreaterThan(0);
      }
    }
  });
});
