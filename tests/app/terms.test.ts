import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasDrawing } from '../../src/app/drawings/index.tsx';
import { CAUSE_NAMES } from '../../src/app/words/causes.ts';
import { findTerms, TERM_IDS, TERMS } from '../../src/app/words/terms.ts';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { SETTINGS } from '../../src/signs/settings.ts';

describe('terms of the trade', () => {
  it('each have a drawing, a sentence or more, and words of their own', () => {
    const all = TERM_IDS.flatMap((id) => TERMS[id].words as readonly string[]);
    expect(new Set(all).size).toBe(all.length);
    for (const id of TERM_IDS) {
      const { drawing, says, words } = TERMS[id];
      expect(hasDrawing(drawing), id).toBe(true);
      expect(says, id).toMatch(/[.]$/);
      for (const word of words) expect(word, id).toBe(word.toLowerCase());
    }
  });

  it('are each met in what the app says or asks', () => {
    const said = [...Object.values(CAUSE_NAMES), JSON.stringify([KNOWLEDGE, SETTINGS])]
      .join(' ')
      .toLowerCase();
    const unused = TERM_IDS.filter((id) => !TERMS[id].words.some((word) => said.includes(word)));
    expect(unused).toEqual([]);
  });

  it('are found as whole words, once each, however they are written', () => {
    expect(findTerms('Nitrogen locked up: 3 in 10. Locked up, not short.')).toEqual([
      { text: 'Nitrogen locked up', term: 'lock-up' },
      { text: ': 3 in 10. Locked up, not short.' },
    ]);
    expect(findTerms('The phase of the moon, pot-bounded')).toEqual([
      { text: 'The phase of the moon, pot-bounded' },
    ]);
    expect(findTerms('unfinished, hot compost').map(({ term }) => term)).toEqual(['raw-compost']);
  });

  it('lose nothing of a sentence', () => {
    const word = fc.constantFrom(
      'cupped',
      'Mosaic',
      'pH',
      'halo',
      ' ',
      ', ',
      'leaf mine',
      'tied up',
      '-',
      'x',
    );
    fc.assert(
      fc.property(fc.array(word), (words) => {
        const sentence = words.join('');
        expect(
          findTerms(sentence)
            .map(({ text }) => text)
            .join(''),
        ).toBe(sentence);
      }),
      { seed: 3 },
    );
  });
});
