import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasDrawing } from '../../src/app/drawings/index.tsx';
import { TermText } from '../../src/app/parts/Terms/term-text.tsx';
import { findTerms, TERM_IDS, TERMS } from '../../src/app/words/terms.ts';
import { CHECKS } from '../../src/causes/checks.ts';
import { KNOWLEDGE } from '../../src/causes/knowledge/index.ts';
import { SETTINGS } from '../../src/signs/settings.ts';
import { CREATURE_SIGNS, MARKS, PLANT_SIGNS, SPREAD_SIGNS, TEST_SIGNS } from '../../src/signs/vocabulary.ts';

const WORDS = fileURLToPath(new URL('../../src/app/words/', import.meta.url));

/** All that the app can say of plants, lower case: the knowledge base, what is asked, what is to be done, and the faces' wording. */
const SAID = [
  JSON.stringify([KNOWLEDGE, SETTINGS, CHECKS]),
  ...[MARKS, PLANT_SIGNS, CREATURE_SIGNS, SPREAD_SIGNS, TEST_SIGNS].flat().map(({ says }) => says),
  ...readdirSync(WORDS)
    .filter((name) => name !== 'terms.ts')
    .map((name) =>
      readFileSync(WORDS + name, 'utf8').replace(/^import .*$|\/\*\*[\s\S]*?\*\/|\/\/.*$/gm, ''),
    ),
]
  .join('\n')
  .toLowerCase();
const isSaid = (word: string): boolean => new RegExp(`(?<![\\w-])${word}(?![\\w-])`).test(SAID);

/** What a neighbour without a garden might not know. A word that comes to be said later needs its term then. */
const OF_THE_TRADE = `
  fungus, fungi, spore, spores, virus, viruses, thrips, mite, mites, whitefly, whiteflies, leafhopper, leafhoppers, capsid, capsids,
  larva, larvae, pupa, nymph, nymphs, mummies, gall, galls, blight, rust, wilt, clubroot, damping off, oedema, honeydew, pustule,
  pustules, mosaic, mottled, stippled, stippling, leaf mine, leaf mines, leaf miner, halo, haloed, cupped, cupping, interveinal,
  chlorosis, necrosis, canker, tipburn, frass, powdery mildew, downy mildew, potash, potassium, phosphate, phosphorus, magnesium,
  molybdenum, boron, midrib, midribs, growing point, growing points, petiole, node, cotyledon, seed leaves, brassica, brassicas,
  humus, biochar, char, fleece, cloche, cloches, salts, extract, draw the lots, locked up, tied up, residue, drift, herbicide,
  aminopyralid, eelworm, nematode, pot-bound, hardened off, hardening off, acid soil, soil reaction, ph, digestate, leachate
`
  .split(',')
  .map((word) => word.trim());

describe('terms of the trade', () => {
  it('leave no word of the trade unexplained that the app says', () => {
    const met = OF_THE_TRADE.filter(isSaid);
    expect(met.length).toBeGreaterThan(OF_THE_TRADE.length / 2);
    const unexplained = met.filter((word) => findTerms(word)[0]?.term === undefined);
    expect(unexplained).toEqual([]);
  });

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
    const unused = TERM_IDS.filter((id) => !TERMS[id].words.some(isSaid));
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

  it('stay on one line with the bracket and the stop beside them, and nothing is lost', () => {
    interface Node {
      readonly props: { readonly class?: string; readonly children?: unknown };
    }
    const textOf = (node: unknown): string => {
      if (Array.isArray(node)) return node.map(textOf).join('');
      if (typeof node === 'object' && node !== null) return textOf((node as Node).props.children);
      return typeof node === 'string' ? node : '';
    };
    const held = (sentence: string): string[] => {
      const drawn = TermText({ children: sentence });
      expect(textOf(drawn)).toBe(sentence);
      return ([drawn.props.children].flat(3) as (string | Node)[]).flatMap((node) =>
        typeof node === 'object' && node.props.class === 'term-held' ? [textOf(node)] : [],
      );
    };
    expect(held('Light and dark green (mosaic), not residue.')).toEqual(['(mosaic),', 'residue.']);
    expect(held('Residue (mosaic)')).toEqual(['Residue', '(mosaic)']);
    fc.assert(
      fc.property(fc.array(fc.constantFrom('residue', 'mosaic', '(', ')', '.', ', ', ' ', 'a')), (words) => {
        held(words.join(''));
      }),
      { seed: 5 },
    );
  });
});
