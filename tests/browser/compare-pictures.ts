import sharp from 'sharp';

/**
 * How far two pictures of a screen lie apart. Both are brought to a quarter of their width and softened, so that another version
 * of the browser, or of the library that draws letters, makes no difference; then
 * `mean`: the mean difference of a channel over the whole, 0 to 255;
 * `far`: the share of the picture, 0 to 1, that differs by more than `FAR`;
 * `columns`: the mean difference between the columns' mean colours, 0 to 255, that is what is left when lines wrap elsewhere.
 */
export interface Apart {
  readonly mean: number;
  readonly far: number;
  readonly columns: number;
}

/** Least difference of a channel that the eye takes for another colour beside it. Our own choice. */
const FAR = 28;
const SCALE = 4;
/** In pixels of the small picture: about the height of a letter. */
const SOFT = 1.6;

/**
 * What may lie between two pictures of one screen. Taken again on one machine they lay 1.2, 0.002 and 0.5 apart at most; a moved
 * column, a lost picture or another theme lies beyond (`compare-pictures.test.ts`).
 */
export const TOLERATED: Apart = { mean: 4, far: 0.03, columns: 3 };

/**
 * On a machine with other faces lines wrap elsewhere, and what follows stands lower: with the Liberation faces in place of the
 * references' seven screens lay up to 21, 0.31 and 5.5 apart. Then only colours and columns can be held to.
 */
export const TOLERATED_OTHER_FACES: Apart = { mean: 32, far: 0.45, columns: 8 };

interface Small {
  readonly data: Buffer;
  readonly width: number;
  readonly height: number;
}

async function bringDown(picture: Buffer, size?: { width: number; height: number }): Promise<Small> {
  const { width = 0, height = 0 } = size ?? (await sharp(picture).metadata());
  const { data, info } = await sharp(picture)
    .removeAlpha()
    .resize(Math.round(width / SCALE), Math.round(height / SCALE), { fit: 'fill', kernel: 'lanczos3' })
    .blur(SOFT)
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

/** Mean colour of each column, three numbers a column. */
function columnsOf({ data, width, height }: Small): Float64Array {
  const sums = new Float64Array(width * 3);
  for (let at = 0; at < data.length; at++) sums[at % (width * 3)]! += data[at]! / height;
  return sums;
}

const meanApart = (one: ArrayLike<number>, other: ArrayLike<number>): number => {
  let sum = 0;
  for (let at = 0; at < one.length; at++) sum += Math.abs(one[at]! - other[at]!);
  return sum / one.length;
};

/**
 * @param seen a screenshot
 * @param reference the same screen, of any size with the same proportions
 */
export async function comparePictures(seen: Buffer, reference: Buffer): Promise<Apart> {
  const { width = 0, height = 0 } = await sharp(seen).metadata();
  const one = await bringDown(seen);
  const other = await bringDown(reference, { width, height });
  let far = 0;
  for (let at = 0; at < one.data.length; at += 3) {
    const apart = [0, 1, 2].map((channel) => Math.abs(one.data[at + channel]! - other.data[at + channel]!));
    if (Math.max(...apart) > FAR) far++;
  }
  return {
    mean: meanApart(one.data, other.data),
    far: far / (one.data.length / 3),
    columns: meanApart(columnsOf(one), columnsOf(other)),
  };
}

/** Which of the measures are beyond what is tolerated, in words; none where the pictures agree. */
export const beyond = (apart: Apart, tolerated: Apart): string[] =>
  (Object.keys(tolerated) as (keyof Apart)[])
    .filter((name) => apart[name] > tolerated[name])
    .map((name) => `${name} ${apart[name].toFixed(3)}, at most ${tolerated[name]}`);
