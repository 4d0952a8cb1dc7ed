import { describe, expect, it } from 'vitest';
import type { CautionId } from '../../../src/causes/cautions.ts';
import { KNOWLEDGE } from '../../../src/causes/knowledge/index.ts';
import type { CauseId } from '../../../src/signs/vocabulary.ts';

const byId = (id: CauseId) => KNOWLEDGE.find((cause) => cause.id === id)!;

describe('the usual cautions stand where work can hurt', () => {
  it.each<[CauseId, CautionId[]]>([
    // MISS-P3679 (do not eat or sell what it hurt), NCSU-CARRY, EDIS-AG416 (do not move the load).
    // Plants that took up weedkiller carry it on to the next heap or mulch, whichever way it came (from memory).
    ['residue-in-compost', ['residue', 'do-not-compost', 'local-rules', 'compost-dust', 'ask']],
    ['spray-drift', ['drift', 'do-not-compost', 'local-rules']],
    ['blight', ['notifiable', 'do-not-compost']],
    ['clubroot', ['notifiable', 'do-not-compost', 'lime']],
    ['virus', ['do-not-compost']],
    ['wilt-disease', ['do-not-compost']],
    ['slugs-snails', ['slug-bait']],
    ['aphids', ['sprays']],
    ['hot-compost', ['compost-dust']],
    ['unlisted', ['ask']],
  ])('%s: %s', (cause, cautions) => {
    expect(byId(cause).cautions).toEqual(expect.arrayContaining(cautions));
  });
});
