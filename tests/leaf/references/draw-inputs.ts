/**
 * The pictures that a general library and this code are both asked about; drawn from a seed. Run by
 * `make-references.py`, this file prints them as JSON, so that they are drawn in one place only.
 */
import { seededRandom } from '../../../src/leaf/draw-leaf.ts';

export interface DrawnMask {
  readonly name: string;
  readonly width: number;
  readonly height: number;
  /** 255 = in, 0 = out. */
  readonly data: Uint8Array;
}

function drawMask(
  name: string,
  width: number,
  height: number,
  isIn: (x: number, y: number) => boolean,
): DrawnMask {
  const data = Uint8Array.from({ length: width * height }, (_, i) =>
    isIn(i % width, Math.floor(i / width)) ? 255 : 0,
  );
  return { name, width, height, data };
}

const inDisc = (x: number, y: number, cx: number, cy: number, r: number): boolean =>
  (x - cx) ** 2 + (y - cy) ** 2 < r * r;

/** Shapes that tell the two kinds of neighbours apart, holes, a rim that cuts, and one region of a leaf's form. */
export function drawMasks(): DrawnMask[] {
  const random = seededRandom(7);
  const turn = (x: number, y: number, cx: number, cy: number, angle: number): [number, number] => [
    (x - cx) * Math.cos(angle) + (y - cy) * Math.sin(angle),
    (y - cy) * Math.cos(angle) - (x - cx) * Math.sin(angle),
  ];
  return [
    drawMask('bitten leaf with holes', 110, 80, (x, y) => {
      const [u, v] = turn(x, y, 54, 40, 0.4);
      const isLeaf = Math.abs(u) < 46 && Math.abs(v) < 23 * (1 - (u / 46) ** 2) ** 0.8;
      return (
        isLeaf &&
        !inDisc(x, y, 55, 66, 9) &&
        !inDisc(x, y, 45, 40, 5) &&
        !inDisc(x, y, 66, 47, 3) &&
        !inDisc(x, y, 31, 33, 1.2)
      );
    }),
    drawMask('slender leaf', 90, 90, (x, y) => {
      const [u, v] = turn(x, y, 45.3, 44.2, -0.7);
      return (u / 40) ** 2 + (v / 13) ** 2 < 1;
    }),
    drawMask('leaf cut by the frame', 70, 60, (x, y) => inDisc(x, y, 58, 26, 34) && !inDisc(x, y, 40, 30, 6)),
    drawMask('things that touch at corners', 40, 30, (x, y) => {
      const inChain = x < 16 && y < 16 && Math.floor(x / 4) === Math.floor(y / 4);
      const inRing = inDisc(x, y, 28, 15, 9) && !inDisc(x, y, 28, 15, 5);
      return inChain || inRing || inDisc(x, y, 28, 15, 2) || (x === 39 && y === 29) || (x === 0 && y === 20);
    }),
    drawMask('speckle', 48, 40, () => random() < 0.45),
  ];
}

export interface DrawnPlane {
  readonly width: number;
  readonly height: number;
  /** 255 = leaf. */
  readonly mask: Uint8Array;
  readonly values: Float32Array;
  /** 255 = on a drawn vein. */
  readonly veins: Uint8Array;
}

/** L* of a leaf of the size that measures are taken on: midrib, seven pairs of side veins, one dark line, spots, shade and grain. */
export function drawVeinedPlane(): DrawnPlane {
  const width = 380;
  const height = 220;
  const random = seededRandom(11);
  const mask = new Uint8Array(width * height);
  const values = new Float32Array(width * height);
  const veins = new Uint8Array(width * height);
  const spots = Array.from({ length: 10 }, () => [70 + 240 * random(), 70 + 80 * random()] as const);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const i = y * width + x;
      const u = (x - 190) / 185;
      const v = (y - 110) / 100;
      if (u * u + v * v >= 1) {
        values[i] = 85;
        continue;
      }
      mask[i] = 255;
      // Distance across each line and how far it stands out in L*.
      const lines: [number, number][] = [[Math.abs(y - 110), 14]];
      for (let k = 0; k < 7; k++) {
        const along = (x - 50 - 40 * k) * 0.75 + Math.abs(y - 110) * 0.66;
        const across = Math.abs((x - 50 - 40 * k) * 0.66 - Math.abs(y - 110) * 0.75);
        if (along > 0) lines.push([across, 10]);
      }
      lines.push([Math.abs((x - 300) * 0.8 + (y - 60) * 0.6), y > 60 ? -9 : 0]);
      let light = 42 + 6 * Math.sin(x / 90) + 4 * Math.cos(y / 70) + 2 * (random() + random() - 1);
      for (const [across, step] of lines) {
        light += step * Math.exp(-0.5 * (across / 1.8) ** 2);
        if (step !== 0 && across < 2.5) veins[i] = 255;
      }
      for (const [sx, sy] of spots) light -= 9 * Math.exp(-0.5 * (Math.hypot(x - sx, y - sy) / 3.5) ** 2);
      values[i] = light;
    }
  }
  return { width, height, mask, values, veins };
}

const [, script = ''] = process.argv;
if (script.endsWith('draw-inputs.ts')) {
  const plain = ({ data, ...mask }: DrawnMask) => ({ ...mask, data: [...data] });
  const { width, height, ...plane } = drawVeinedPlane();
  process.stdout.write(
    JSON.stringify({
      masks: drawMasks().map(plain),
      plane: {
        width,
        height,
        mask: [...plane.mask],
        values: [...plane.values],
        veins: [...plane.veins],
      },
    }),
  );
}
