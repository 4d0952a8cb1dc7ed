import { isObject, list, number, text } from './loose.ts';

/**
 * What the network of signs made of one photo. Kept, so that a look weighs the same when it is opened without the network, and
 * so that a garden can learn from it. Numbers are rounded to four digits.
 */
export interface SeenByNetwork {
  /** Which network: the first 16 digits of the SHA-256 of its file. Numbers of two networks cannot be compared. */
  readonly network: string;
  /** What it reported: how much likelier the picture is where the sign is there. Empty where it kept silent. */
  readonly reports: readonly { readonly sign: string; readonly ratio: number }[];
  /** Log odds in the order of the network's marks. */
  readonly logits: readonly number[];
  /** What its last layer but one saw. */
  readonly features: readonly number[];
  /** How unlike the picture is to all that it was taught. */
  readonly strangeness: number;
}

/** Longer lists and larger numbers than any network of ours gives. */
const MOST_NUMBERS = 4096;
const LARGEST = 1e6;

/** Made whole, or `undefined` where its numbers are not all there: a row with gaps tells nothing. */
export function repairSeenByNetwork(found: unknown): SeenByNetwork | undefined {
  if (!isObject(found) || text(found.network) === '') return undefined;
  const [logits, features] = [numbersOf(found.logits), numbersOf(found.features)];
  const strangeness = number(found.strangeness, 0, LARGEST);
  if (!logits || !features || strangeness === undefined) return undefined;
  const reports = list(found.reports).flatMap((report) => {
    if (!isObject(report) || text(report.sign) === '') return [];
    const ratio = number(report.ratio, 1 / LARGEST, LARGEST);
    return ratio === undefined ? [] : [{ sign: text(report.sign), ratio }];
  });
  return { network: text(found.network), reports, logits, features, strangeness };
}

function numbersOf(found: unknown): number[] | undefined {
  const all = list(found);
  const good = all.flatMap((one) => number(one, -LARGEST, LARGEST) ?? []);
  return good.length > 0 && good.length === all.length && good.length <= MOST_NUMBERS ? good : undefined;
}
