/** Plain statistics of two classes of numbers, for `evaluate.ts`. */

/** One yes or no question answered by the network: its log odds, what was so, and log odds known from elsewhere. */
export interface Said {
  readonly z: number;
  readonly there: boolean;
  readonly offset?: number;
  /** How much it counts among all; where not given both answers count alike, so that chances hold at even odds. */
  readonly weight?: number;
}

export interface Scale {
  readonly slope: number;
  readonly bias: number;
}

export const chanceOf = (logOdds: number): number => 1 / (1 + Math.exp(-logOdds));

function weightsOf(said: readonly Said[]): number[] {
  const there = said.filter((one) => one.there).length;
  return said.map((one) => one.weight ?? 0.5 / (one.there ? there : said.length - there));
}

/** Mean loss in nats of chances at even odds, both answers counted alike. */
export function lossOf(said: readonly Said[], { slope, bias }: Scale): number {
  const weights = weightsOf(said);
  return said.reduce((sum, { z, there, offset = 0 }, k) => {
    const chance = chanceOf((there ? 1 : -1) * (offset + slope * z + bias));
    return sum - weights[k]! * Math.log(Math.max(1e-9, chance));
  }, 0);
}

/**
 * Temperature and level of log odds by maximum likelihood (Platt 1999; Guo et al. 2017), by Newton's method, with a weak pull of the
 * slope towards 0 so that few photographs cannot make it steep.
 */
export function fitScale(said: readonly Said[], withBias = true): Scale {
  const weights = weightsOf(said);
  const pull = 2 / said.length;
  let slope = 0;
  let bias = 0;
  for (let round = 0; round < 60; round++) {
    let [gs, gb, hss, hsb, hbb] = [pull * slope, 0, pull + 1e-9, 0, 1e-9];
    for (const [k, { z, there, offset = 0 }] of said.entries()) {
      const chance = chanceOf(offset + slope * z + bias);
      const off = weights[k]! * (chance - (there ? 1 : 0));
      const curve = weights[k]! * chance * (1 - chance);
      gs += off * z;
      gb += off;
      hss += curve * z * z;
      hsb += curve * z;
      hbb += curve;
    }
    if (!withBias) [gb, hsb, hbb] = [0, 0, 1];
    const det = hss * hbb - hsb * hsb + 1e-12;
    const clamp = (step: number): number => Math.max(-1, Math.min(1, step));
    slope -= clamp((gs * hbb - gb * hsb) / det);
    bias -= clamp((gb * hss - gs * hsb) / det);
  }
  return { slope: Math.max(0, slope), bias };
}
