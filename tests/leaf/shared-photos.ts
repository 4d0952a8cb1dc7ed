/** The optional folder of labelled photographs; tests that need it skip where it is absent. */
import { existsSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { decodeInNode } from '../../src/photo/decode-in-node.ts';
import type { Pixels } from '../../src/photo/types.ts';

const PHOTOS = fileURLToPath(new URL('../../../shared/photos/', import.meta.url));

export const HAS_PHOTOS: boolean = existsSync(`${PHOTOS}manifest.csv`);

export interface PhotoRow {
  readonly set: string;
  readonly label: string;
  readonly file: string;
  readonly note: string;
}

/** Every `n`th photograph of a label, spread over the set, at most `most`. */
export function pickPhotos(set: string, label: string, most: number): PhotoRow[] {
  if (!HAS_PHOTOS) return [];
  const rows = readFileSync(`${PHOTOS}manifest.csv`, 'utf8')
    .trim()
    .split('\n')
    .slice(1)
    .map((line) => {
      const [rowSet = '', rowLabel = '', file = '', , note = ''] = line.split(',');
      return { set: rowSet, label: rowLabel, file, note };
    })
    .filter((row) => row.set === set && row.label === label);
  return Array.from(
    { length: Math.min(most, rows.length) },
    (_, k) => rows[Math.floor((k * rows.length) / Math.min(most, rows.length))]!,
  );
}

export const photoBytes = (file: string): Uint8Array => new Uint8Array(readFileSync(PHOTOS + file));

export async function decodePhoto(file: string): Promise<Pixels> {
  return (await decodeInNode(photoBytes(file))).pixels;
}

/** Chance that a value of the first list lies above one of the second; ties count half. */
export function areaUnderCurve(present: readonly number[], absent: readonly number[]): number {
  let wins = 0;
  for (const p of present) for (const a of absent) wins += p > a ? 1 : p === a ? 0.5 : 0;
  return wins / (present.length * absent.length);
}

/** Spearman's rank correlation, ties broken by order. */
export function rankCorrelation(x: readonly number[], y: readonly number[]): number {
  const ranks = (values: readonly number[]): number[] => {
    const order = values.map((v, i) => [v, i] as const).sort((p, q) => p[0] - q[0]);
    const out = new Array<number>(values.length).fill(0);
    for (const [rank, [, i]] of order.entries()) out[i] = rank;
    return out;
  };
  const rx = ranks(x);
  const ry = ranks(y);
  const middle = (x.length - 1) / 2;
  let both = 0;
  let own = 0;
  for (let i = 0; i < rx.length; i++) {
    both += (rx[i]! - middle) * (ry[i]! - middle);
    own += (rx[i]! - middle) ** 2;
  }
  return both / own;
}

export const medianOf = (values: readonly number[]): number =>
  [...values].sort((p, q) => p - q)[values.length >> 1]!;

/** Overlap of two masks over their union. */
export function overlapOf(found: ArrayLike<number>, truth: ArrayLike<number>): number {
  let both = 0;
  let either = 0;
  for (let i = 0; i < truth.length; i++) {
    const f = found[i]! > 127;
    const t = truth[i]! > 127;
    if (f && t) both++;
    if (f || t) either++;
  }
  return both / either;
}
