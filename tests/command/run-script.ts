import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = fileURLToPath(new URL('../..', import.meta.url));
const { scripts } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  scripts: Record<string, string>;
};

/** Runs a script of `package.json` that is one TypeScript file, as `npm run` does, but without waiting for npm to start each time. */
export function runScript(script: string, ...args: string[]) {
  const file = /^tsx (\S+)$/.exec(scripts[script] ?? '')?.[1];
  if (!file) throw new Error(`${script} does not run one file`);
  const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', file, ...args], {
    cwd: ROOT,
    encoding: 'utf8',
  });
  return { status, stdout, stderr };
}
