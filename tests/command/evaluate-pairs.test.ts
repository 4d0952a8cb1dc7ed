import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { expect, it } from 'vitest';
import type { Pair } from '../../src/command/evaluate/find-hardest-pairs.ts';
import { runScript } from './run-script.ts';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
/** Once as a person runs it, through npm. */
const byNpm = () => spawnSync('npm', ['run', '--silent', 'pairs'], { cwd: ROOT, encoding: 'utf8' });
const run = (...args: string[]) => runScript('pairs', ...args);

it('prints the hardest twenty pairs, with what tells them apart', () => {
  const { status, stdout } = byNpm();
  expect(status).toBe(0);
  expect(stdout.match(/^ ?\d+\. /gm)).toHaveLength(20);
  expect(stdout).toMatch(/iron-short and manganese-short: .*\n.*brown-spots@new [\d.]+ for manganese-short/);
});

it('gives machines as many as they ask for', () => {
  const pairs = JSON.parse(run('--most', '3', '--json').stdout) as Pair[];
  expect(pairs).toHaveLength(3);
  for (const { causes, questions } of pairs)
    for (const { speaksFor } of questions) expect(causes).toContain(speaksFor);
});

it('a wrong number ends in the usage line', () => {
  const { status, stderr } = run('--most', 'many');
  expect(status).toBe(2);
  expect(stderr).toMatch(/Usage/);
});
