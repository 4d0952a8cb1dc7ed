// `npm test`: install what is missing, then lint, types, build, unit tests and browser tests. Closes with the counts.
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureBuild, ensureChromium, ensureDependencies, ROOT, run } from './ensure-ready.mjs';

ensureDependencies();
process.env.CHROMIUM = ensureChromium();

const steps = /** @type {const} */ ([
  ['format and lint', () => run('npm', ['run', '--silent', 'check:format'])],
  ['types', () => run('npm', ['run', '--silent', 'check:types'])],
  ['build', ensureBuild],
]);
for (const [name, step] of steps) {
  try {
    step();
    console.log(`✓ ${name}`);
  } catch {
    console.error(`✗ ${name}`);
    console.log('0 passed, 1 failed');
    process.exit(1);
  }
}

let passed = 0;
let failed = 0;
let skipped = 0;
for (const project of ['unit', 'browser']) {
  const report = join(ROOT, `.cache/${project}-tests.json`);
  rmSync(report, { force: true });
  const { status } = spawnSync(
    'npx',
    [
      '--no-install',
      'vitest',
      'run',
      '--config',
      'tests/vitest.config.ts',
      '--project',
      project,
      '--reporter=default',
      '--reporter=json',
      `--outputFile.json=${report}`,
    ],
    { cwd: ROOT, stdio: 'inherit' },
  );
  const counts = existsSync(report) ? JSON.parse(readFileSync(report, 'utf8')) : undefined;
  passed += counts?.numPassedTests ?? 0;
  skipped += (counts?.numPendingTests ?? 0) + (counts?.numTodoTests ?? 0);
  // A suite that fails to load counts no test but exits with an error: it must not pass as a clean run.
  failed += Math.max(counts?.numFailedTests ?? 0, status === 0 ? 0 : 1);
}
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exit(failed === 0 && passed > 0 ? 0 : 1);
