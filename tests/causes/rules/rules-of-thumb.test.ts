import { describe, expect, it } from 'vitest';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import type { Cause, Circumstances } from '../../../src/causes/schema.ts';
import type { CauseId } from '../../../src/signs/vocabulary.ts';
import { nodesOf } from './nodes-of.ts';

const byId = (id: CauseId): Cause => KNOWLEDGE.find((cause) => cause.id === id)!;
const tempered = (id: CauseId, when: Circumstances | { sign: string }) =>
  byId(id).tempered?.find((losses) => JSON.stringify(losses.when) === JSON.stringify(when));
const leaning = (id: CauseId, when: Circumstances) =>
  byId(id).leanings.find((entry) => JSON.stringify(entry.when) === JSON.stringify(when));
const frequency = (id: CauseId, sign: string) =>
  byId(id)
    .signs.flatMap(nodesOf)
    .find((node) => node.sign === sign)?.word;

describe('rules of thumb of the trade (common practice, no source)', () => {
  it('greenfly arrive some weeks before their predators', () => {
    expect(leaning('aphids', { season: 'spring' })?.leans).toBe('a-little-more');
  });

  it('greenfly need no spray once ladybird larvae are there', () => {
    const withHunters = tempered('aphids', { sign: 'aphid-hunters' });
    expect(withHunters?.leave).toBeLessThanOrEqual(2);
    expect(withHunters?.leave).toBeLessThan(byId('aphids').losses.leave / 4);
  });

  it('pigeons tear brassica leaf from between the ribs', () => {
    expect(frequency('birds', 'veins-left@old')).toBe('usually');
    expect(leaning('birds', { crop: 'brassica' })?.leans).toBe('more');
  });

  it('pigeons are bearable in summer, not in winter', () => {
    const summer = tempered('birds', { season: 'summer' })!;
    const winter = tempered('birds', { season: 'winter' })!;
    const net = byId('birds').remedies.find(({ course }) => course === 'cover')!;
    expect(summer.leave).toBeLessThanOrEqual(net.remains);
    expect(winter.leave).toBeGreaterThan(net.remains * 5);
  });

  it('no pigeon eats under a net', () => {
    expect(leaning('birds', { setting: 'netted', is: 'yes' })?.leans).toBe('never');
  });

  it('a climbing bean whose tip a rabbit took shoots again', () => {
    const bean = tempered('rabbits-deer', { crop: 'runner-bean' })!;
    expect(bean.leave).toBeLessThan(byId('rabbits-deer').losses.leave / 4);
    expect(frequency('rabbits-deer', 'getting-better')).toBe('sometimes');
  });

  it('old leaves left lying feed slugs', () => {
    expect(byId('slugs-snails').remedies.map(({ course }) => course)).toContain('clear-hiding-places');
    expect(leaning('slugs-snails', { setting: 'crop-stage', is: 'old' })?.because).toMatch(/feed/);
  });

  it('potato and tomato show residue first, as inward-curling new leaves', () => {
    expect(frequency('residue-in-compost', 'cupped-up@new')).toBe('usually');
    expect(leaning('residue-in-compost', { crop: 'residue-sensitive' })?.leans).toBe('a-little-more');
  });
});

describe('leave alone and act now (trade facts K12, K13)', () => {
  it('a mine in a beet leaf costs the root nothing (USU-MINER)', () => {
    expect(tempered('leaf-miner', { crop: 'root-crop' })).toMatchObject({ leave: 0, watch: 0 });
  });

  it('flea beetle costs a growing plant little and a seedling much (RUT-FLEA, KY-FLEA)', () => {
    expect(tempered('flea-beetle', { setting: 'crop-stage', is: 'growing' })!.leave).toBeLessThanOrEqual(1);
    expect(tempered('flea-beetle', { setting: 'crop-stage', is: 'seedling' })!.leave).toBeGreaterThan(20);
  });

  it('caterpillars are bearable between four leaves and the filling head (RUTGERS-COLE)', () => {
    const at = (stage: string) => tempered('caterpillars', { setting: 'crop-stage', is: stage })!.leave;
    expect(at('growing')).toBeLessThan(at('fruiting'));
    expect(at('fruiting')).toBeLessThan(at('seedling'));
  });

  it('waiting hardly helps where action is urgent: blight, virus, maggots at the root', () => {
    const urgent = [
      byId('blight').losses,
      byId('virus').losses,
      tempered('root-feeders', { sign: 'maggots-at-root' })!,
    ];
    for (const { leave, watch } of urgent) {
      expect(leave).toBeGreaterThanOrEqual(60);
      expect(watch).toBeGreaterThanOrEqual(leave * 0.75);
    }
  });

  it('late blight needs a nightshade and clubroot a brassica', () => {
    expect(byId('blight').onlyCrops).toEqual(['nightshade']);
    expect(byId('clubroot').onlyCrops).toEqual(['brassica']);
  });
});
