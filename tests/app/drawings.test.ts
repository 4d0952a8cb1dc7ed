/// <reference types="vite/client" />
/**
 * The drawings: every word a grower can be asked about has one, no two can be taken for each other by their lines
 * alone, and the markup keeps to the page's rules (no inline style, colours only in the style sheet).
 */
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { ComponentChildren, VNode } from 'preact';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { DRAWN_IDS, Drawing, hasDrawing } from '../../src/app/drawings/index.tsx';
import { SETTING_DRAWINGS } from '../../src/app/drawings/settings/index.ts';
import { TERM_DRAWINGS } from '../../src/app/drawings/terms.ts';
import { CHECKS } from '../../src/causes/checks.ts';
import { INJURY_STEPS } from '../../src/compare/pot-test/injury-scale.ts';
import { SETTINGS, type Setting } from '../../src/signs/settings.ts';
import {
  BROADER_MARKS,
  CREATURE_SIGNS,
  MARKS,
  PLANT_SIGNS,
  SPREAD_SIGNS,
  TEST_SIGNS,
} from '../../src/signs/vocabulary.ts';

const FOLDER = fileURLToPath(new URL('../../src/app/drawings/', import.meta.url));
const STYLE_SHEET = readFileSync(`${FOLDER}drawings.css`, 'utf8');
const LEAF_IDS = [...MARKS.map(({ id }) => id), ...Object.keys(BROADER_MARKS)];
/** The drawings that each setting calls for: one an answer, or one for the whole question of yes or no. */
const OF_SETTINGS = Object.entries<Setting>(SETTINGS).map(([id, setting]): string[] =>
  setting.kind === 'yes-no'
    ? [`setting-${id}`]
    : (setting.kind === 'number' ? setting.bands : setting.options).map(
        (answer) => `setting-${id}-${answer.id}`,
      ),
);
const EVERY_ID = [
  ...LEAF_IDS,
  ...[PLANT_SIGNS, CREATURE_SIGNS, SPREAD_SIGNS, TEST_SIGNS, CHECKS].flatMap((set) =>
    set.map(({ id }) => id),
  ),
  ...['old', 'new', 'whole', 'normal', 'position-old', 'position-new'],
  ...['only-old', 'most-old', 'most-new', 'both'].map((where) => `lying-${where}`),
  ...OF_SETTINGS.flat(),
  ...INJURY_STEPS.map(({ score }) => `injury-${score}`),
  ...Object.keys(TERM_DRAWINGS),
];

const isNode = (child: ComponentChildren): child is VNode<Record<string, unknown>> =>
  typeof child === 'object' && child !== null && 'props' in child;

/** Writes out what the component returns: plain elements only, so no renderer is needed. */
function written(child: ComponentChildren): string {
  if (Array.isArray(child)) return child.map(written).join('');
  if (!isNode(child))
    return child === null || child === undefined || typeof child === 'boolean' ? '' : String(child);
  const { children, ...attributes } = child.props;
  const said = Object.entries(attributes).map(([name, value]) => ` ${name}="${String(value)}"`);
  return `<${String(child.type)}${said.join('')}>${written(children as ComponentChildren)}</${String(child.type)}>`;
}
const markup = (of: string, title?: string): string =>
  written(Drawing(title === undefined ? { of } : { of, title }));
const classesIn = (text: string): string[] =>
  [...text.matchAll(/class="([^"]+)"/g)].flatMap((m) => (m[1] ?? '').split(' '));

/** The drawing's lines without any wash, 48 px wide, as darkness from 0 to 255. */
async function linesAlone(of: string): Promise<Uint8Array> {
  const lines = markup(of)
    .replace(/<path class="(wash|band) [^>]*><\/path>/g, '')
    .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" width="48" height="48" color="black" ');
  const { data } = await sharp(Buffer.from(lines))
    .extractChannel('alpha')
    .blur(1)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return data;
}
const meanDifference = (a: Uint8Array, b: Uint8Array): number =>
  a.reduce((sum, value, i) => sum + Math.abs(value - (b[i] ?? 0)), 0) / a.length / 255;

describe('drawings', () => {
  it('has one for every mark, sign, creature, lie over the bed, check, answer, photo, place and step of injury', () => {
    expect(EVERY_ID.filter((id) => !hasDrawing(id) || markup(id) === '')).toEqual([]);
    expect([...DRAWN_IDS].sort()).toEqual([...EVERY_ID].sort());
  });

  it('has one for each answer about the setting, and no two answers to one question share a drawing', () => {
    const called = OF_SETTINGS.flat();
    expect(called.length).toBeGreaterThan(80);
    expect(Object.keys(SETTING_DRAWINGS).sort()).toEqual([...called].sort());
    for (const answers of OF_SETTINGS)
      expect(new Set(answers.map((id) => markup(id))).size, answers.join(', ')).toBe(answers.length);
  });

  it('draws a mark the same wherever on the plant it is asked about', () => {
    for (const id of LEAF_IDS)
      for (const where of ['old', 'new', 'some']) expect(markup(`${id}@${where}`)).toBe(markup(id));
  });

  it('draws nothing for a word it does not know', () => {
    for (const of of ['', 'no-such-mark', 'no-such-mark@old', 'mottled@middle', 'constructor']) {
      expect(hasDrawing(of)).toBe(false);
      expect(Drawing({ of })).toBeNull();
    }
  });

  it('is an image with a name when titled, and hidden from a screen reader when not', () => {
    const named = markup('mottled', 'patchwork of light and dark');
    expect(named).toContain('role="img"');
    expect(named).toContain('<title>patchwork of light and dark</title>');
    expect(named).not.toContain('aria-hidden');
    expect(markup('mottled')).toContain('aria-hidden="true"');
    expect(markup('mottled')).not.toContain('role=');
  });

  it('can be told apart by its lines alone at 48 px', async () => {
    const drawn = await Promise.all(EVERY_ID.map(linesAlone));
    const alike: string[] = [];
    drawn.forEach((a, i) => {
      expect(a.reduce((sum, value) => sum + value, 0) / a.length / 255, EVERY_ID[i]).toBeGreaterThan(0.02);
      drawn.slice(0, i).forEach((b, j) => {
        if (meanDifference(a, b) < 0.01) alike.push(`${EVERY_ID[i]} and ${EVERY_ID[j]}`);
      });
    });
    expect(alike).toEqual([]);
  });

  it('stays on its sheet, but for hands that reach in from outside', async () => {
    const hands = ['turn-leaf-over', 'rub-leaf', 'hold-to-light', 'scrape-soil'];
    const leaving: string[] = [];
    for (const id of EVERY_ID) {
      expect(markup(id), id).not.toMatch(/NaN|undefined|Infinity|null/);
      const wide = markup(id)
        .replace(/<path class="(wash|band) [^>]*><\/path>/g, '')
        .replace('viewBox="0 0 96 96"', 'viewBox="-12 -12 120 120" width="120" height="120"')
        .replace('<svg ', '<svg xmlns="http://www.w3.org/2000/svg" ');
      const alpha = await sharp(Buffer.from(wide)).extractChannel('alpha').raw().toBuffer();
      const outside = alpha.some((value, i) => {
        const [x, y] = [(i % 120) - 12, Math.floor(i / 120) - 12];
        return value > 100 && (x < 0 || y < 0 || x > 95 || y > 95);
      });
      if (outside && !hands.includes(id)) leaving.push(id);
    }
    expect(leaving).toEqual([]);
  });

  it('uses only looks that the style sheet defines, and no style of its own', () => {
    const known = new Set([...STYLE_SHEET.matchAll(/\.([a-z][a-z-]*)/g)].map((m) => m[1]));
    const own = new Set(['line']);
    for (const id of EVERY_ID) {
      expect(
        classesIn(markup(id)).filter((look) => !known.has(look) && !own.has(look)),
        id,
      ).toEqual([]);
      expect(markup(id), id).not.toMatch(/\sstyle=/);
    }
  });

  it('keeps colours in the style sheet', () => {
    const sources = readdirSync(FOLDER, { recursive: true })
      .map(String)
      .filter((name) => /\.tsx?$/.test(name));
    expect(sources.length).toBeGreaterThan(15);
    for (const name of sources) {
      const text = readFileSync(FOLDER + name, 'utf8');
      expect(text, name).not.toMatch(/#[0-9a-f]{3,8}\b|\b(?:rgba?|hsla?|oklch|oklab|lab|lch|color)\(/i);
      expect(text, name).not.toMatch(/style=/);
    }
    for (const id of EVERY_ID) {
      const paints = [...markup(id).matchAll(/(?:fill|stroke|color)="([^"]+)"/g)].map((m) => m[1]);
      expect(new Set(paints), id).toEqual(new Set(['none', 'currentColor']));
    }
  });
});
