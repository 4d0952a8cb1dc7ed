// Plain JavaScript on purpose: these functions run on a fresh clone, before anything is installed.
import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

/** Root of the checkout. */
export const ROOT = fileURLToPath(new URL('../../..', import.meta.url));
const CACHE = join(ROOT, '.cache');

/**
 * Run a command in the checkout and let it print.
 * @param {string} command
 * @param {string[]} args
 * @throws {Error} when it exits with anything but 0
 */
export function run(command, args) {
  execFileSync(command, args, { cwd: ROOT, stdio: 'inherit' });
}

/**
 * Do the work only if its inputs changed since it last succeeded.
 * @param {string} name file of the stamp
 * @param {string} fingerprint of the inputs
 * @param {boolean} stillThere whether the product is there
 * @param {() => void} work
 */
function onceFor(name, fingerprint, stillThere, work) {
  const stamp = join(CACHE, name);
  if (stillThere && existsSync(stamp) && readFileSync(stamp, 'utf8') === fingerprint) return;
  work();
  mkdirSync(CACHE, { recursive: true });
  writeFileSync(stamp, fingerprint);
}

/** @param {string[]} paths files or folders, relative to the checkout */
function fingerprintOf(paths) {
  const hash = createHash('sha256').update(process.version);
  /** @param {string} path */
  const add = (path) => {
    if (!existsSync(path)) return;
    if (statSync(path).isDirectory()) {
      for (const name of readdirSync(path).sort()) add(join(path, name));
    } else {
      hash.update(relative(ROOT, path)).update('\0').update(readFileSync(path));
    }
  };
  for (const path of paths) add(join(ROOT, path));
  return hash.digest('hex');
}

/** Install the locked dependencies unless they are in place already. */
export function ensureDependencies() {
  onceFor('installed', fingerprintOf(['package-lock.json']), existsSync(join(ROOT, 'node_modules')), () => {
    console.log('Installing the locked dependencies …');
    run('npm', ['ci', '--ignore-scripts', '--no-audit', '--no-fund']);
  });
}

/**
 * Draw and measure the leaves of the invented garden, unless the last time was by the same code. About half a minute.
 * @returns {string} path of the JSON file: an array of `SeenPhoto`
 */
export function ensureDemoPhotos() {
  const script = 'src/app/demo/at-build/see-photos.ts';
  const target = join(CACHE, 'demo-photos.json');
  const drawn = ['training/rendered-leaves', 'src/app/demo/invent-cases.ts', 'src/app/demo/list-photos.ts'];
  const seen = fingerprintOf(['package-lock.json', 'src/leaf', 'src/photo', ...drawn, script]);
  onceFor('demo-photos', seen, existsSync(target), () => {
    console.log('Measuring the leaves of the invented garden …');
    mkdirSync(CACHE, { recursive: true });
    run('npx', ['--no-install', 'tsx', script, target]);
  });
  return target;
}

/** Build the app unless the last build was made from the same sources. */
export function ensureBuild() {
  const sources = ['src', 'models', 'training/rendered-leaves'];
  const inputs = ['package-lock.json', 'vite.config.ts', 'tsconfig.json', ...sources];
  onceFor('built', fingerprintOf(inputs), existsSync(join(ROOT, 'dist/index.html')), () => {
    run('npx', ['--no-install', 'vite', 'build', '--logLevel', 'warn']);
  });
}

/**
 * Find Chromium for the browser tests; install Debian's if there is none.
 * @returns {string} path of the executable
 */
export function ensureChromium() {
  const found = findChromium();
  if (found) return found;
  console.log("Installing Debian's chromium for the browser tests …");
  const asRoot = process.getuid?.() === 0 ? [] : ['sudo'];
  const steps = [
    ['apt-get', 'update', '-qq'],
    ['env', 'DEBIAN_FRONTEND=noninteractive', 'apt-get', 'install', '-y', '-qq', 'chromium'],
  ];
  for (const step of steps) {
    const [command = '', ...args] = [...asRoot, ...step];
    const { status } = spawnSync(command, args, { stdio: ['ignore', 'ignore', 'inherit'] });
    if (status !== 0) break;
  }
  const installed = findChromium();
  if (installed) return installed;
  throw new Error(
    'Chromium could not be installed. Install it yourself (apt-get install chromium) or set CHROMIUM to its path, then run npm test again.',
  );
}

/** @returns {string | undefined} */
function findChromium() {
  const places = [
    process.env.CHROMIUM,
    '/usr/bin/chromium',
    '/usr/bin/chromium-browser',
    '/usr/bin/google-chrome',
  ];
  return places.find((path) => path !== undefined && existsSync(path));
}
