/** What the tests ask of jstat, which brings no types. */
declare module 'jstat' {
  const jstat: {
    readonly normal: { cdf(x: number, mean: number, sd: number): number };
    readonly studentt: { cdf(t: number, df: number): number; inv(p: number, df: number): number };
    readonly noncentralt: { cdf(t: number, df: number, shift: number): number };
    readonly ibeta: (x: number, a: number, b: number) => number | false;
    readonly gammaln: (x: number) => number;
  };
  export default jstat;
}
