import type { Measured } from '../leaf/measures.ts';

/** Scales on which measures are roughly normal: fractions in log-odds, counts and densities in logs, the rest as they are. */
export type MeasureScale = 'log-odds' | 'log' | 'plain';

/** Keeps a fraction of 0 or 1 finite: about the smallest patch that can be told from noise. */
const FLOOR = 0.01;

/** A measure on its scale, its standard error carried along by the slope. */
export function toScale({ value, se }: Measured, scale: MeasureScale): Measured {
  switch (scale) {
    case 'plain':
      return { value, se };
    case 'log': {
      const above = Math.max(0, value) + 1;
      return { value: Math.log(above), se: se / above };
    }
    case 'log-odds': {
      const p = (Math.min(1, Math.max(0, value)) + FLOOR) / (1 + 2 * FLOOR);
      return { value: Math.log(p / (1 - p)), se: se / (p * (1 - p)) / (1 + 2 * FLOOR) };
    }
  }
}
