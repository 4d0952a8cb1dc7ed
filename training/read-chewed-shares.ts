import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import sharp from 'sharp';
import { fillHoles } from '../src/leaf/label-regions.ts';

const FOLDER = fileURLToPath(new URL('../../shared/photos/soybean-holes/', import.meta.url));

/** Shares of a whole leaflet that are gone inside the outline and from its edge, from the masks of `soybean-holes`. */
export interface ChewedShares {
  readonly hole: number;
  readonly edge: number;
}

/** @param leaflet name of the scan without its ending, which is also its group. */
export async function readChewedShares(leaflet: string): Promise<ChewedShares> {
  const read = async (mask: string): Promise<{ data: Uint8Array; width: number; height: number }> => {
    const file = readFileSync(`${FOLDER}${mask}/${leaflet}.png`);
    const { data, info } = await sharp(file).greyscale().raw().toBuffer({ resolveWithObject: true });
    return {
      data: Uint8Array.from(data, (v) => (v > 127 ? 255 : 0)),
      width: info.width,
      height: info.height,
    };
  };
  const remaining = await read('mask_remaining');
  const whole = await read('mask_whole_leaf');
  const filled = fillHoles(remaining.data, remaining.width, remaining.height);
  let all = 0;
  let hole = 0;
  let edge = 0;
  for (let i = 0; i < filled.length; i++) {
    if (whole.data[i] === 255) all++;
    if (filled[i] === 255 && remaining.data[i] === 0) hole++;
    if (whole.data[i] === 255 && filled[i] === 0) edge++;
  }
  return { hole: hole / all, edge: edge / all };
}
