/** The few functions of jStat that the tests ask; the library brings no types. */
declare module 'jstat' {
  interface Stat {
    gammaln(x: number): number;
    betaln(a: number, b: number): number;
    ibeta(x: number, a: number, b: number): number;
    beta: { pdf(x: number, a: number, b: number): number; cdf(x: number, a: number, b: number): number };
    normal: { cdf(x: number, mean: number, sd: number): number };
    studentt: { cdf(x: number, freedom: number): number; pdf(x: number, freedom: number): number };
    binomial: { pdf(k: number, n: number, p: number): number };
  }
  const bundle: { readonly jStat: Stat };
  export default bundle;
}
