import type { Happening } from '../state/year-of-bed.ts';
import { GROUND_WORDS as WORDS } from './ground.ts';
import { namePlanting } from './name-planting.ts';
import { sayEnd } from './outcome.ts';
import { sayLook } from './verdicts.ts';

/** One thing that happened at a bed, in a line. */
export function sayHappening(one: Happening): string {
  switch (one.what) {
    case 'event': {
      const { what, amount, note } = one.event;
      const much = amount ? WORDS.amounts[amount] : undefined;
      return [WORDS.events[what] + (much ? `, ${much}` : ''), note].filter(Boolean).join('. ');
    }
    case 'spread': {
      const { depthCm, how } = one.given;
      const details = [
        depthCm === undefined ? '' : WORDS.deep(depthCm),
        how ? WORDS.ways[how].toLowerCase() : '',
      ];
      return WORDS.wentOn(one.batch.name, details.filter(Boolean).join(', '));
    }
    case 'sown':
    case 'planted':
    case 'cleared':
      return WORDS[one.what](namePlanting(one.planting));
    case 'look':
      return `${one.kept.plant}. ${sayLook(one.look)}`;
    case 'pots-sown':
      return WORDS.potsSown(one.batch.name);
    case 'pots-told':
      return WORDS.potsTold(one.batch.name, one.test.said?.verdict ?? 'go-on');
    case 'trial-laid-out':
    case 'trial-measured':
    case 'trial-ended':
      return WORDS.trials[one.what](one.trial.name);
    case 'ended':
      return `${one.kept.plant}. ${one.kept.outcome ? WORDS.ended(sayEnd(one.kept.outcome)) : ''}`;
  }
}
