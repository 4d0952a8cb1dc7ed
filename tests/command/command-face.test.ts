import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { drawLeaf } from '../../src/leaf/draw-leaf.ts';
import { writeJpeg } from '../pictures/write-jpeg.ts';
import { runScript } from './run-script.ts';

let folder = '';
const at = (name: string): string => join(folder, name);

const run = (script: 'triage' | 'measure', ...args: string[]) => runScript(script, ...args);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-command-'));
  const yellow = drawLeaf({ yellow: { where: 'all' }, background: 'paper' });
  writeFileSync(at('old leaf.jpg'), await writeJpeg(yellow.pixels));
  writeFileSync(at('green.jpg'), await writeJpeg(drawLeaf({ background: 'paper' }).pixels));
  writeFileSync(
    at('notes.json'),
    JSON.stringify({ crop: 'tomato', date: '2026-07-14', setting: {}, signs: { 'yellow-even@old': 'seen' } }),
  );
  writeFileSync(
    at('faulty.json'),
    JSON.stringify({ crop: 'tomatoe', setting: { netted: 1 }, signs: { yelow: 'seen', aphids: 'seen' } }),
  );
  writeFileSync(at('broken.json'), '{"crop": "tomato",');
  writeFileSync(at('words.jpg'), 'this is no picture');
  writeFileSync(at('empty.jpg'), '');
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('triage', () => {
  it('weighs photos and notes together and prints the agreed JSON', () => {
    const { status, stdout } = run(
      'triage',
      '--old',
      at('old leaf.jpg'),
      '--notes',
      at('notes.json'),
      '--json',
      '--mask-out',
      at('masks'),
    );
    expect(status).toBe(0);
    const result = JSON.parse(stdout);
    expect(result.photos).toHaveLength(1);
    expect(result.photos[0]).toMatchObject({ file: at('old leaf.jpg'), role: 'old', leaf: { found: true } });
    for (const measured of Object.values<{ value: number; se: number }>(result.photos[0].measures)) {
      expect(Number.isFinite(measured.value)).toBe(true);
      expect(measured.se).toBeGreaterThanOrEqual(0);
    }
    expect(
      result.findings.find(
        ({ sign, from }: { sign: string; from: string }) => sign === 'yellow-even@old' && from === 'eye',
      ),
    ).toBeDefined();
    const chances: number[] = result.causes.map(({ probability }: { probability: number }) => probability);
    expect(chances).toEqual([...chances].sort((a, b) => b - a));
    for (const { probability, low, high, priorDecibans, for: pro, against } of result.causes.slice(0, 10)) {
      expect(low).toBeLessThanOrEqual(probability);
      expect(high).toBeGreaterThanOrEqual(probability);
      // The reasons reproduce the odds.
      const sum = [...pro, ...against].reduce(
        (total: number, { decibans }) => total + decibans,
        priorDecibans,
      );
      expect(sum).toBeCloseTo(10 * Math.log10(probability / (1 - probability)), 6);
    }
    expect(['leave', 'watch', 'check', 'act']).toContain(result.verdict.id);
    expect(result.verdict.lookAgain > '2026-07-14').toBe(true);
    expect(result.verdict.because.causes.length).toBeGreaterThan(0);
    // What is asked first for the plant's story may gain nothing by itself; everything else must.
    const story = [
      'compost-kinds',
      'wood-in-root-zone',
      'weeks-since-mixed-in',
      'hay-source',
      'recent-temperature',
    ];
    for (const { id, minutes, gain } of result.nextChecks) {
      expect(minutes).toBeGreaterThan(0);
      expect(gain).toBeGreaterThanOrEqual(0);
      if (gain === 0) expect(story).toContain(id);
    }
  });

  it('prints for people without --json: words before numbers, never a bare percent of a cause', () => {
    const { status, stdout } = run('triage', '--notes', at('notes.json'));
    expect(status).toBe(0);
    expect(stdout).toMatch(/Verdict: /);
    expect(stdout).toMatch(/in 10/);
    expect(stdout).not.toMatch(/certain/i);
  });

  it('names every fault of the notes and uses the rest', () => {
    const { status, stdout, stderr } = run('triage', '--notes', at('faulty.json'), '--json');
    expect(status).toBe(0);
    expect(stderr).toBe('');
    const { complaints, findings } = JSON.parse(stdout);
    expect(complaints).toHaveLength(3);
    expect(findings).toMatchObject([{ sign: 'aphids', from: 'eye' }]);
  });

  it.each([
    ['broken.json', /Not valid JSON/],
    ['missing.json', /cannot be opened/],
  ])('goes on without notes from %s and says so', (file, complaint) => {
    const { status, stdout, stderr } = run('triage', '--notes', at(file), '--new', at('green.jpg'));
    expect(status).toBe(0);
    expect(stderr).toMatch(complaint);
    expect(stdout).toMatch(/Verdict: /);
  });

  it('reports a bad photo and goes on with the good one', () => {
    const { status, stdout } = run(
      'triage',
      '--old',
      at('words.jpg'),
      '--new',
      at('green.jpg'),
      '--whole',
      at('gone.jpg'),
      '--json',
    );
    expect(status).toBe(0);
    const { photos } = JSON.parse(stdout);
    expect(photos.map(({ trouble }: { trouble: string[] }) => trouble[0])).toEqual([
      'not-a-picture',
      undefined,
      'file-not-found',
    ]);
  });

  it('answers a batch line by line, ids kept, broken lines in their place', () => {
    writeFileSync(
      at('batch.jsonl'),
      [
        '{"id":"a","answers":{"crop":"kale","setting":{"netted":true},"signs":{"veins-left@old":"seen"}}}',
        '',
        '{"crop":"pea","setting":{},"signs":{}}',
        '{"id":"c","answers":{',
      ].join('\n'),
    );
    const { status, stdout } = run('triage', '--batch', at('batch.jsonl'));
    expect(status).toBe(0);
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines).toHaveLength(3);
    expect(lines[0].id).toBe('a');
    const birds = lines[0].causes.find(({ id }: { id: string }) => id === 'birds');
    expect(birds).toMatchObject({ probability: 0, ruledOut: 'netted=yes' });
    expect(lines[1].nothingSaid).toBe(true);
    expect(lines[2].error).toMatch(/line 4: Not valid JSON/);
  });

  it.each([
    [[], /Nothing to weigh/],
    [['--old'], /--old needs a value/],
    [['--leaf', 'x'], /Unknown option --leaf/],
    [['photo.jpg'], /Say which leaf/],
    [['--batch', 'x', '--old', 'y'], /--batch goes alone/],
  ])('answers wrong usage %j with one line and status 2', (args, message) => {
    const { status, stdout, stderr } = run('triage', ...args);
    expect(status).toBe(2);
    expect(stdout).toBe('');
    expect(stderr).toMatch(message);
    expect(stderr.trim().split('\n')).toHaveLength(1);
  });
});

describe('measure', () => {
  it('gives one result a line and a mask of the size of the photo, named after it', async () => {
    const { status, stdout } = run(
      'measure',
      at('old leaf.jpg'),
      at('empty.jpg'),
      at('green.jpg'),
      '--json',
      '--mask-out',
      at('masks'),
    );
    expect(status).toBe(0);
    const lines = stdout
      .trim()
      .split('\n')
      .map((line) => JSON.parse(line));
    expect(lines.map(({ file }: { file: string }) => file)).toEqual([
      at('old leaf.jpg'),
      at('empty.jpg'),
      at('green.jpg'),
    ]);
    expect(lines[1].trouble).toEqual(['empty-file']);
    const chlorotic = (line: { measures: Record<string, { value: number }> }): number =>
      line.measures['chlorotic-fraction']!.value;
    expect(chlorotic(lines[0])).toBeGreaterThan(chlorotic(lines[2]) + 0.5);
    const mask = sharp(readFileSync(at('masks/old leaf.png')));
    const { width, height, channels } = await mask.metadata();
    expect([width, height, channels]).toEqual([640, 480, 1]);
    const values = new Set(await mask.raw().toBuffer());
    expect([...values].sort((a, b) => a - b)).toEqual([0, 255]);
  });

  it('fails only when no photo could be read', () => {
    expect(run('measure', at('words.jpg'), '--json').status).toBe(1);
    expect(run('measure').status).toBe(2);
  });
});
