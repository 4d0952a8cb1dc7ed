import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { seePhoto } from '../../src/app/demo/at-build/see-photos.ts';
import { buildDemo } from '../../src/app/demo/build-demo.ts';
import { growingHalf } from '../../src/app/demo/growing-half.ts';
import { inventGround } from '../../src/app/demo/invent-ground.ts';
import { inventTrials } from '../../src/app/demo/invent-trials.ts';
import { listPhotos } from '../../src/app/demo/list-photos.ts';
import type { SeenPhoto } from '../../src/app/demo/seen-photo.ts';
import { ensureDemoPhotos } from '../../src/command/setup/ensure-ready.mjs';
import { readPotTest } from '../../src/compare/pot-test/read-pot-test.ts';
import { gatherGarden } from '../../src/garden/gather-garden.ts';
import { judgeBatch } from '../../src/garden/judge-batch.ts';
import { airOf, listToday } from '../../src/garden/list-today.ts';
import type { CaseRecord, GardenRecord, LookRecord } from '../../src/garden/records.ts';
import { repairRecord } from '../../src/garden/repair-record.ts';
import type { LeafReading } from '../../src/leaf/types.ts';
import { checkAnswers } from '../../src/signs/check-answers.ts';
import type { Answers } from '../../src/signs/types.ts';
import { CAUSES, CROPS } from '../../src/signs/vocabulary.ts';

const TODAY = '2026-07-10';
let records: GardenRecord[] = [];
let photos: SeenPhoto[] = [];
beforeAll(() => {
  photos = JSON.parse(readFileSync(ensureDemoPhotos(), 'utf8'));
  const readings = new Map(photos.map(({ id, reading }) => [id, reading]));
  records = [...inventGround(TODAY), ...[...buildDemo(TODAY, (id) => readings.get(id)!)].flat()];
}, 300_000);

const of = <Kind extends GardenRecord['kind']>(kind: Kind) =>
  records.filter((record): record is Extract<GardenRecord, { kind: Kind }> => record.kind === kind);

describe('the invented garden', () => {
  it('ships the pictures and readings that this code makes', async () => {
    for (const place of [4, 13])
      expect(JSON.parse(JSON.stringify(await seePhoto(listPhotos()[place]!)))).toEqual(photos[place]);
  });

  it('has what a garden in mid-season has', () => {
    expect(of('bed')).toHaveLength(12);
    expect(of('planting').length).toBeGreaterThanOrEqual(12);
    expect(of('weather').filter(({ forecast }) => !forecast).length).toBeGreaterThanOrEqual(70);
    expect(of('weather').some(({ forecast }) => forecast)).toBe(true);
    expect(of('case')).toHaveLength(8);
    expect(of('case').filter(({ closedOn }) => closedOn)).toHaveLength(4);
    for (const kept of of('case')) expect([2, 3]).toContain(kept.looks.length);
  });

  it('is marked as demo in every record, and each id is there once', () => {
    expect(records.filter(({ demo }) => demo !== true)).toEqual([]);
    expect(new Set(records.map(({ kind, id }) => `${kind}:${id}`)).size).toBe(records.length);
  });

  it('survives repair unchanged', () => {
    for (const record of records) {
      const plain = JSON.parse(JSON.stringify(record));
      expect(repairRecord(plain)).toEqual(plain);
    }
  });

  it('names nothing that is not there', () => {
    const beds = new Set(of('bed').map(({ id }) => id));
    const plantings = new Set(of('planting').map(({ id }) => id));
    const cases = new Set(of('case').map(({ id }) => id));
    const looks = new Set(of('look').map(({ id }) => id));
    const pictures = new Set(photos.map(({ id }) => id));
    for (const { bedId, crop } of of('planting')) {
      expect(beds).toContain(bedId);
      expect(CROPS).toContain(crop);
    }
    for (const { bedId } of of('event')) expect(beds).toContain(bedId);
    for (const { given, suspicion } of of('batch')) {
      for (const { bedId } of given) expect(beds).toContain(bedId);
      if (suspicion?.caseId) expect(cases).toContain(suspicion.caseId);
    }
    for (const kept of of('case')) {
      expect(beds).toContain(kept.bedId);
      expect(plantings).toContain(kept.plantingId);
      for (const { id } of kept.looks) expect(looks).toContain(id);
      for (const cause of kept.outcome?.causes ?? []) expect(CAUSES.map(({ id }) => id)).toContain(cause);
    }
    for (const look of of('look')) {
      expect(cases).toContain(look.caseId);
      for (const { id } of look.photos) expect(pictures).toContain(id);
    }
    expect(of('look').flatMap(({ photos }) => photos)).toHaveLength(pictures.size);
    expect(photos.map(({ id }) => id)).toEqual(listPhotos().map(({ id }) => id));
  });

  it('has its days in order, none of what happened after today', () => {
    for (const { sownOn, plantedOn } of of('planting')) {
      if (sownOn && plantedOn) expect(sownOn < plantedOn).toBe(true);
      expect((plantedOn ?? sownOn ?? '9') <= TODAY).toBe(true);
    }
    for (const { readings, given, startedOn, arrivedOn } of of('batch')) {
      const days = readings.map(({ date }) => date);
      expect(days).toEqual([...days].sort());
      for (const day of [...days, ...given.map(({ date }) => date)])
        expect((startedOn ?? arrivedOn ?? '') <= day && day <= TODAY).toBe(true);
    }
    for (const kept of of('case')) {
      const planting = of('planting').find(({ id }) => id === kept.plantingId);
      const days = kept.looks.map(({ date }) => date);
      expect(days).toEqual([...days].sort());
      expect(days[0]).toBe(kept.openedOn);
      expect((planting?.plantedOn ?? planting?.sownOn ?? '9') <= kept.openedOn).toBe(true);
      expect(days.at(-1)! <= (kept.closedOn ?? TODAY) && (kept.closedOn ?? '') <= TODAY).toBe(true);
    }
    for (const { date, minCelsius, maxCelsius, forecast } of of('weather')) {
      expect(minCelsius! < maxCelsius!).toBe(true);
      expect(date > TODAY).toBe(forecast === true);
    }
  });

  it('has a pot test that is due a look today, and one that stopped its load, as they were read', () => {
    const garden = gatherGarden(records);
    const [running, stopped] = ['running', 'stopped'].map((id) =>
      of('pot-test').find((test) => test.id === `demo-pots-${id}`),
    );
    expect(of('pot-test')).toHaveLength(2);
    expect(listToday(garden, TODAY, () => undefined).map(({ id }) => id)).toContain('pots-demo-pots-running');
    expect(running).toMatchObject({ lookOn: TODAY, said: { verdict: 'go-on' } });
    expect(stopped?.said).toMatchObject({
      verdict: 'do-not-spread',
      why: expect.arrayContaining(['injury']),
    });
    expect(readPotTest(stopped!).verdict).toBe('do-not-spread');
    // No look after its end, and none of what it says later than that.
    expect(stopped?.scores.every(({ date }) => date <= stopped.endedOn!)).toBe(true);
    const load = garden.batches.find(({ id }) => id === stopped?.batchId);
    expect(load!.suspicion!.on <= stopped!.endedOn!).toBe(true);
    expect(garden.batches.find(({ id }) => id === stopped?.batchId)?.suspicion?.potTestId).toBe(stopped?.id);
  });

  it('tries nothing in a bed where it does not grow', () => {
    const running = inventTrials(TODAY).find(({ ended }) => !ended)!;
    const [{ bedId } = { bedId: '' }] = running.layouts[0]!.beds;
    expect(running.name).toContain('leeks');
    expect(
      of('planting')
        .filter((planting) => planting.bedId === bedId)
        .map(({ crop }) => crop),
    ).toContain('leek');
    for (const trial of inventTrials(TODAY))
      if (trial.measure?.by === 'hand' && trial.measure.kind !== 'height') expect(trial.ofWhat).toBeTruthy();
  });

  it('has two suspected batches, one still hot, one finished by the published rules', () => {
    const garden = gatherGarden(records);
    const air = airOf(garden.weather);
    const stateOf = (id: string) =>
      judgeBatch(garden.batches.find((batch) => batch.id === `demo-batch-${id}`)!, TODAY, air);
    expect(garden.batches.filter(({ suspicion }) => suspicion?.state === 'suspected')).toHaveLength(2);
    expect(stateOf('heap')).toMatchObject({ state: 'unfinished', why: 'still-hot' });
    expect(stateOf('old').state).toBe('finished');
  });

  it('has answers of the vocabulary, leaves that were found, and rankings that followed from them', () => {
    for (const look of of('look') as LookRecord<LeafReading>[]) {
      const { recorded: _recorded, ...said } = look.answers as Answers;
      expect(checkAnswers(said).faults).toEqual([]);
      for (const { reading } of look.photos) expect(reading?.leaf.found).toBe(true);
      expect(look.ranking).toBeDefined();
    }
    for (const kept of of('case') as CaseRecord[])
      for (const { verdict, leading } of kept.looks) {
        expect(verdict).not.toBe('');
        expect(leading.length).toBeGreaterThan(0);
      }
  });

  it('is in the growing season on every day of the year', () => {
    expect(growingHalf('2026-07-10')).toBe('north');
    expect(growingHalf('2026-11-28')).toBe('south');
  });
});
