import { type RetakenPair, tellCoverage } from '../tests/leaf/retake-photos.ts';

type Pairs = readonly Pick<RetakenPair, 'first' | 'second'>[];

/**
 * Prints for each measure how often pairs differ by less than the errors of both, and what errors would have to be multiplied by for
 * 68 of 100, on the half to fit on; and how often on the other.
 */
export function printCoverage(fittedOn: Pairs, triedOn: Pairs): void {
  const tried = tellCoverage(triedOn);
  console.log('measure | to fit on: share, of pairs, × | to try on: share, of pairs, median move ± error');
  for (const { id, count, share, needed } of tellCoverage(fittedOn)) {
    const other = tried.find((row) => row.id === id);
    console.log(
      id.padEnd(20),
      `${share.toFixed(2)} of ${count} × ${needed.toFixed(2)} |`,
      other === undefined
        ? '-'
        : `${other.share.toFixed(2)} of ${other.count}, ${other.medianMove.toPrecision(3)} ± ${other.medianSe.toPrecision(3)}`,
    );
  }
}
