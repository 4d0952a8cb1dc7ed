import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CASE_GROUPS, GROUP_IDS, placeOf, scoreGroups } from '../../src/command/evaluate/case-groups.ts';
import { type Evaluation, evaluateCases } from '../../src/command/evaluate/evaluate-cases.ts';
import { readCases } from '../../src/command/evaluate/read-cases.ts';
import { chancesByNaiveBayes } from '../../src/command/evaluate/weigh-answers.ts';
import { CAUSES, type CauseId } from '../../src/signs/vocabulary.ts';
import { runScript } from './run-script.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const SHARED = join(ROOT, '../shared/real-cases.jsonl');
const GROUPS = join(ROOT, '../shared/case-groups.json');

/** Two cases of our own invention: one plain, one that cannot be hit. */
const INVENTED = [
  {
    id: 'plain',
    cause_group: 'mildew',
    also: ['varietal_colour'],
    information: 'rich',
    answers: { crop: 'courgette', date: '2026-08-10', setting: {}, signs: { 'white-powder@old': 'seen' } },
  },
  {
    id: 'hopeless',
    cause_group: 'bird',
    also: [],
    information: 'poor',
    answers: {
      crop: 'kale',
      setting: { netted: true },
      signs: { caterpillars: 'seen', 'yelow@old': 'seen' },
    },
  },
];

let folder = '';
const at = (name: string): string => join(folder, name);
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'bedside-evaluate-'));
  writeFileSync(at('cases.jsonl'), `${INVENTED.map((one) => JSON.stringify(one)).join('\n')}\n\n`);
  writeFileSync(
    at('wrong.jsonl'),
    '{"id": "x", "cause_group": "unheard-of", "information": "rich", "answers": {}}\n',
  );
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const run = (...args: string[]) => runScript('evaluate', ...args);

describe('groups of the experts', () => {
  it('name every cause at least once', () => {
    const named = new Set<CauseId>(Object.values(CASE_GROUPS).flat());
    expect([...named].sort()).toEqual(CAUSES.map(({ id }) => id).sort());
  });

  it.runIf(existsSync(GROUPS))('are those of the shared list', () => {
    const { about: _, ...groups } = JSON.parse(readFileSync(GROUPS, 'utf8')) as Record<string, unknown>;
    expect(CASE_GROUPS).toEqual(groups);
  });

  it('score the best of their causes, and a shared cause counts for the group asked about', () => {
    const scores = scoreGroups(
      new Map<CauseId, number>([
        ['cold-check', 0.6],
        ['aphids', 0.3],
        ['frost', 0.1],
      ]),
    );
    expect(scores.get('cold')).toBe(0.6);
    expect(placeOf('cold', scores)).toBe(1);
    expect(placeOf('phosphorus_or_cold_purple', scores)).toBe(1);
    expect(placeOf('aphids', scores)).toBe(3);
    expect(placeOf('drought', scores)).toBe(4);
  });
});

describe('evaluate', () => {
  it('counts a hit and a miss, and says why it missed', async () => {
    const { cases, complaints } = await readCases(at('cases.jsonl'));
    expect(cases.map(({ id }) => id)).toEqual(['plain', 'hopeless']);
    expect(complaints.join()).toMatch(/yelow/);
    const { byInformation, misses, verdicts } = evaluateCases(cases);
    expect(byInformation.rich!.network).toMatchObject({ cases: 1, first: 1, inFirstThree: 1 });
    expect(byInformation.poor!.network).toMatchObject({ cases: 1, first: 0 });
    expect(byInformation.all!.network.first).toBe(0.5);
    expect(misses).toHaveLength(1);
    expect(misses[0]).toMatchObject({ id: 'hopeless', expected: 'bird', got: 'caterpillar', chance: 0 });
    expect(misses[0]!.leading.reasons[0]).toMatchObject({ sign: 'caterpillars' });
    expect(Object.values(verdicts.mildew!).reduce((a, b) => a + b)).toBe(1);
  });

  it('the naive baseline knows one cause at a time: its chances sum to 1', () => {
    const chances = chancesByNaiveBayes({
      crop: 'tomato',
      setting: {},
      signs: { 'yellow-even@old': 'seen' },
    });
    expect([...chances.values()].reduce((a, b) => a + b)).toBeCloseTo(1, 9);
  });

  it('prints tables for people and JSON for machines', () => {
    const text = run(at('cases.jsonl'));
    expect(text.status).toBe(0);
    for (const part of [
      'naive-bayes',
      'prior-only',
      'log loss',
      'Reliability',
      'Misses (1)',
      'caterpillars:',
    ])
      expect(text.stdout).toContain(part);
    const json = run(at('cases.jsonl'), '--json');
    const evaluation = JSON.parse(json.stdout) as Evaluation;
    for (const method of ['network', 'naive-bayes', 'prior-only'] as const) {
      const { brier, logLoss, calibrationError } = evaluation.byInformation.all![method];
      for (const value of [brier, logLoss, calibrationError]) expect(Number.isFinite(value)).toBe(true);
      expect(brier).toBeLessThanOrEqual(2);
    }
    expect(GROUP_IDS).toEqual(expect.arrayContaining(Object.keys(evaluation.byGroup)));
  });

  it('a file that is not there, or a group nobody knows, ends in one line that says so', () => {
    const missing = run(at('nowhere.jsonl'));
    expect(missing.status).toBe(2);
    expect(missing.stderr.trim().split('\n')).toHaveLength(1);
    const wrong = run(at('wrong.jsonl'));
    expect(wrong.status).toBe(1);
    expect(wrong.stderr).toMatch(/line 1.*unheard-of/);
  });
});

// The case files are optional; where they lie beside the project the goals of the knowledge base hold.
describe('published cases', () => {
  // `weighAnswers` takes them all for cases of the north, which without a date makes no difference.
  it('from south of the equator or where no winter comes give no date', () => {
    const published = ['set-a', 'set-b']
      .map((set) => join(ROOT, `tests/triage/published-cases/${set}.jsonl`))
      .concat(existsSync(SHARED) ? [SHARED] : [])
      .flatMap((file) => readFileSync(file, 'utf8').trim().split('\n'))
      .map((line) => JSON.parse(line) as { id: string; context: string; answers?: { date?: string } });
    const elsewhere = published.filter(({ context }) =>
      /Australia|Zealand|South(ern)? Africa|South America|Hawaii|Guam|Puerto Rico|tropic/i.test(context),
    );
    expect(elsewhere.length).toBeGreaterThanOrEqual(5);
    expect(elsewhere.filter(({ answers }) => answers?.date).map(({ id }) => id)).toEqual([]);
  });
});

describe.runIf(existsSync(SHARED))('against experts', () => {
  it('rich cases are mostly first, nearly all among three, and better than the base rates alone', async () => {
    const { cases } = await readCases(SHARED);
    const { byInformation, broken } = evaluateCases(cases);
    expect(byInformation.rich!.network.first).toBeGreaterThanOrEqual(0.8);
    expect(byInformation.rich!.network.inFirstThree).toBeGreaterThanOrEqual(0.9);
    expect(byInformation['rich and fair']!.network.first).toBeGreaterThanOrEqual(0.6);
    expect(byInformation['rich and fair']!.network.inFirstThree).toBeGreaterThanOrEqual(0.92);
    expect(byInformation.all!.network.logLoss).toBeLessThan(byInformation.all!['prior-only'].logLoss / 2);
    expect(broken).toEqual([]);
  });
});
