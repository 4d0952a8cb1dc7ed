import { readdirSync, readFileSync } from 'node:fs';
import Color from 'colorjs.io';
import { describe, expect, it } from 'vitest';

const css = readFileSync(new URL('../../src/app/look/tokens.css', import.meta.url), 'utf8');

/** Colour tokens of the first rule whose selector contains `selector`. */
function tokensOf(selector: string): Record<string, string> {
  const from = css.indexOf(`${selector} {`);
  const block = css.slice(from, css.indexOf('}', from));
  return Object.fromEntries(
    [...block.matchAll(/--([a-z-]+):\s*(#[0-9a-f]{6})/g)].map((found) => [found[1], found[2]]),
  );
}

const THEMES = { light: tokensOf(':root'), dusk: tokensOf(':root[data-theme="dusk"]') };
const contrast = (text: string, ground: string): number =>
  new Color(text).contrast(new Color(ground), 'WCAG21');

describe.each(Object.entries(THEMES))('the %s colours', (_name, tokens) => {
  // 7:1 is level AAA of WCAG 2.2, criterion 1.4.6; contrast by colorjs.io.
  it.each([
    ['ink', 'paper'],
    ['ink', 'paper-deep'],
    ['ink-soft', 'paper'],
    ['ink-soft', 'paper-deep'],
    ['on-clay', 'clay'],
    ['clay', 'paper'],
    ['on-straw', 'straw'],
    ['dead', 'paper'],
    ['purple', 'paper'],
  ])('%s on %s reads in full sun: 7:1 or more', (text, ground) => {
    expect(contrast(tokens[text] ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(7);
  });

  // What can be pressed is told from the paper by its edge (WCAG 2.2, 1.4.11).
  it.each(['paper', 'paper-deep'])('the edge of a control on %s: 3:1 or more', (ground) => {
    expect(contrast(tokens.edge ?? '', tokens[ground] ?? '')).toBeGreaterThanOrEqual(3);
  });

  it('holds no green of our own: every hue lies outside leaf green, or is too grey to have one', () => {
    for (const [name, colour] of Object.entries(tokens)) {
      const { c, h } = new Color(colour).to('lch') as unknown as { c: number; h: number };
      if (c > 12) expect(h < 96 || h > 170, `${name} ${colour} hue ${h}`).toBe(true);
    }
  });
});

it('dusk is the same whether chosen or followed from the device', () => {
  expect(tokensOf(':root:not([data-theme="light"])')).toEqual(THEMES.dusk);
});

it('holds every colour: no other sheet names one', () => {
  const app = new URL('../../src/app/', import.meta.url);
  const sheets = readdirSync(app, { recursive: true, encoding: 'utf8' }).filter(
    (name) => name.endsWith('.css') && !name.endsWith('tokens.css'),
  );
  expect(sheets.length).toBeGreaterThan(20);
  for (const name of sheets)
    expect(
      readFileSync(new URL(name, app), 'utf8').match(/#[0-9a-f]{3,8}\b|\b(?:rgb|hsl|oklch|lab)a?\(/gi),
      name,
    ).toBeNull();
});
