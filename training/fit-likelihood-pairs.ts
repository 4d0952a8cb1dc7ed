/**
 * Fits what each measure says of each mark on the labelled photos, and writes `src/signs/likelihood-pairs.ts`.
 * Run: npx tsx training/fit-likelihood-pairs.ts (needs ../shared/photos). Only numbers leave this script.
 */
import { execFileSync } from 'node:child_process';
import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import type { MarkPair } from '../src/signs/mark-pair.ts';
import { codeFingerprint } from './code-fingerprint.ts';
import { type FittedPair, fitMarkPair, rank, saidLogRatio } from './fit-mark-pair.ts';
import { type JudgedPhoto, MARK_QUESTIONS } from './mark-questions.ts';
import { readChewedShares } from './read-chewed-shares.ts';
import { readLabelledPhotos } from './read-labelled-photos.ts';

const ROOT = fileURLToPath(new URL('..', import.meta.url));
/** Below this, on groups left out, a measure separates too little to speak at all. */
const SPEAKS_FROM = 0.7;

async function readJudgedPhotos(): Promise<JudgedPhoto[]> {
  const readings = await readLabelledPhotos(process.env.READINGS ?? codeFingerprint());
  const found = readings.filter(({ trouble }) => !trouble.includes('no-leaf'));
  return Promise.all(
    found.map(async (photo) =>
      photo.set === 'soybean-holes' ? { ...photo, chewed: await readChewedShares(photo.group) } : photo,
    ),
  );
}

/** Ranking on each set that shows the mark: its photos with the mark against those of the same set without, if any. */
function rankBySet({ heldOut }: FittedPair): string {
  const sets = [...new Set(heldOut.filter(({ isThere }) => isThere).map(({ set }) => set))];
  const ratios = (isThere: boolean, set: string): number[] =>
    heldOut.filter((one) => one.isThere === isThere && one.set === set).map(({ logRatio }) => logRatio);
  return sets
    .map((set) => {
      const away = ratios(false, set);
      return `${set} ${away.length > 0 ? rank(ratios(true, set), away).toFixed(2) : 'none without'}`;
    })
    .join(', ');
}

/**
 * Of photos left out, in bands of the chance that the pair gives at even odds: the chance said and the share that has the
 * mark, both kinds weighing alike.
 */
function reliabilityOf({ pair, heldOut }: FittedPair): string {
  const there = heldOut.filter(({ isThere }) => isThere).length;
  const judged = heldOut.map(({ logRatio, isThere }) => ({
    said: 1 / (1 + Math.exp(-saidLogRatio(pair, logRatio))),
    weight: 1 / (isThere ? there : heldOut.length - there),
    isThere,
  }));
  return [0, 0.2, 0.4, 0.6, 0.8]
    .flatMap((low) => {
      const band = judged.filter(({ said }) => said >= low && said < low + 0.2);
      if (band.length === 0) return [];
      const total = band.reduce((sum, { weight }) => sum + weight, 0);
      const said = band.reduce((sum, one) => sum + one.weight * one.said, 0) / total;
      const was = band.reduce((sum, one) => sum + (one.isThere ? one.weight : 0), 0) / total;
      return [`${said.toFixed(2)}→${was.toFixed(2)} (${band.length})`];
    })
    .join('  ');
}

function writePairs(pairs: readonly MarkPair[]): void {
  const file = `${ROOT}src/signs/likelihood-pairs.ts`;
  const text = `/**
 * What a measure says of a mark: its distribution on photographs with and without the mark, on the given scale.
 * Written by \`training/fit-likelihood-pairs.ts\`; do not edit by hand. Licences of the sets: \`training/README.md\`.
 */
import type { MarkPair } from './mark-pair.ts';

export const LIKELIHOOD_PAIRS: readonly MarkPair[] = ${JSON.stringify(pairs)};
`;
  writeFileSync(file, text);
  execFileSync('npx', ['--no-install', 'biome', 'check', '--write', file], { cwd: ROOT, stdio: 'ignore' });
}

const photos = await readJudgedPhotos();
const fitted = MARK_QUESTIONS.map((question) => fitMarkPair(question, photos)).filter(
  (one) => one !== undefined,
);
for (const one of fitted) {
  const { mark, measure, auc, trust, present, absent } = one.pair;
  process.stdout.write(
    `${mark.padEnd(22)} ${measure.padEnd(20)} AUC ${auc.toFixed(3)} held out (${rankBySet(one)}); n ${present.n} / ${absent.n}; trust ${trust}\n` +
      `  said → was: ${reliabilityOf(one)}\n`,
  );
}
const best = [...new Set(fitted.map(({ pair }) => pair.mark))].flatMap((mark) => {
  const [first] = fitted.filter(({ pair }) => pair.mark === mark).sort((a, b) => b.pair.auc - a.pair.auc);
  return first && first.pair.auc >= SPEAKS_FROM ? [first.pair] : [];
});
writePairs(best);
process.stdout.write(`\n${best.length} marks written to src/signs/likelihood-pairs.ts\n`);
