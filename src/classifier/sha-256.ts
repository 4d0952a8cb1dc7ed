/** Hex digits of the SHA-256 of some bytes (FIPS 180-4). Our own, because a page without a secure context has none. */
export function sha256(bytes: Uint8Array): string {
  const padded = new Uint8Array((((bytes.length + 8) >> 6) + 1) << 6);
  padded.set(bytes);
  padded[bytes.length] = 0x80;
  const view = new DataView(padded.buffer);
  view.setUint32(padded.length - 8, Math.floor(bytes.length / 2 ** 29));
  view.setUint32(padded.length - 4, bytes.length << 3);
  const state = Int32Array.from(START);
  const w = new Int32Array(64);
  for (let at = 0; at < padded.length; at += 64) {
    for (let i = 0; i < 64; i++) w[i] = i < 16 ? view.getInt32(at + 4 * i) : spread(w, i);
    stir(state, w);
  }
  return Array.from(state, (word) => (word >>> 0).toString(16).padStart(8, '0')).join('');
}

const turn = (x: number, by: number): number => (x >>> by) | (x << (32 - by));

function spread(w: Int32Array, i: number): number {
  const a = w[i - 15]!;
  const b = w[i - 2]!;
  const s0 = turn(a, 7) ^ turn(a, 18) ^ (a >>> 3);
  const s1 = turn(b, 17) ^ turn(b, 19) ^ (b >>> 10);
  return (w[i - 16]! + s0 + w[i - 7]! + s1) | 0;
}

function stir(state: Int32Array, w: Int32Array): void {
  let [a, b, c, d, e, f, g, h] = state as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  for (let i = 0; i < 64; i++) {
    const s1 = turn(e, 6) ^ turn(e, 11) ^ turn(e, 25);
    const t1 = (h + s1 + ((e & f) ^ (~e & g)) + ROUNDS[i]! + w[i]!) | 0;
    const s0 = turn(a, 2) ^ turn(a, 13) ^ turn(a, 22);
    const t2 = (s0 + ((a & b) ^ (a & c) ^ (b & c))) | 0;
    [h, g, f, e, d, c, b, a] = [g, f, e, (d + t1) | 0, c, b, a, (t1 + t2) | 0];
  }
  for (const [k, word] of [a, b, c, d, e, f, g, h].entries()) state[k] = (state[k]! + word) | 0;
}

/** The first bits of the fractions of roots of the first primes, as the standard defines them. */
function fractionsOfRoots(count: number, power: number): number[] {
  const primes: number[] = [];
  for (let n = 2; primes.length < count; n++) if (primes.every((p) => n % p !== 0)) primes.push(n);
  return primes.map((p) => ((p ** power % 1) * 2 ** 32) | 0);
}
const START = fractionsOfRoots(8, 1 / 2);
const ROUNDS = fractionsOfRoots(64, 1 / 3);
