/** Second shots of a photograph: other light, exposure, JPEG quality, scale, rotation, mirror; all of known size. */
import sharp from 'sharp';
import { convertLinearToSrgb, LINEAR_OF_BYTE } from '../../src/photo/convert-srgb-to-linear.ts';
import type { Pixels, Spot } from '../../src/photo/types.ts';

/** Multiplies linear R, G, B and adds a white veil; what passes full is clipped, as a camera does. */
export function relight(pixels: Pixels, gains: readonly [number, number, number], veil = 0): Pixels {
  const tables = gains.map((gain) =>
    Uint8ClampedArray.from(LINEAR_OF_BYTE, (v) =>
      Math.round(255 * convertLinearToSrgb(Math.max(0, Math.min(1, v * gain + veil)))),
    ),
  );
  const data = new Uint8ClampedArray(pixels.data.length);
  for (let i = 0; i < data.length; i++) data[i] = i % 4 === 3 ? 255 : tables[i % 4]![pixels.data[i]!]!;
  return { ...pixels, data };
}

export interface Turn {
  readonly angleDegrees: number;
  readonly scale: number;
  readonly mirrored: boolean;
}

/** Turns about the middle and scales, bilinear; beyond the frame its border is repeated. The frame keeps its shape. */
export function turnPhoto(pixels: Pixels, turn: Turn): Pixels {
  const width = Math.round(pixels.width * turn.scale);
  const height = Math.round(pixels.height * turn.scale);
  const cos = Math.cos((turn.angleDegrees * Math.PI) / 180) / turn.scale;
  const sin = Math.sin((turn.angleDegrees * Math.PI) / 180) / turn.scale;
  const data = new Uint8ClampedArray(width * height * 4);
  const { width: w, height: h, data: from } = pixels;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const dx = (x + 0.5 - width / 2) * (turn.mirrored ? -1 : 1);
      const dy = y + 0.5 - height / 2;
      const sx = Math.max(0, Math.min(w - 1.001, cos * dx + sin * dy + w / 2 - 0.5));
      const sy = Math.max(0, Math.min(h - 1.001, -sin * dx + cos * dy + h / 2 - 0.5));
      const at = ((sy | 0) * w + (sx | 0)) * 4;
      const fx = sx % 1;
      const fy = sy % 1;
      const to = (y * width + x) * 4;
      for (let c = 0; c < 3; c++) {
        const top = from[at + c]! * (1 - fx) + from[at + 4 + c]! * fx;
        const low = from[at + w * 4 + c]! * (1 - fx) + from[at + w * 4 + 4 + c]! * fx;
        data[to + c] = top * (1 - fy) + low * fy;
      }
      data[to + 3] = 255;
    }
  }
  return { width, height, data };
}

/** Where a spot of the photograph lies once it is turned. */
export function turnSpot(spot: Spot, pixels: Pixels, turn: Turn): Spot {
  const angle = (turn.angleDegrees * Math.PI) / 180;
  const dx = (spot.x - 0.5) * pixels.width;
  const dy = (spot.y - 0.5) * pixels.height;
  const x = Math.cos(angle) * dx - Math.sin(angle) * dy;
  const y = Math.sin(angle) * dx + Math.cos(angle) * dy;
  return { x: 0.5 + (turn.mirrored ? -x : x) / pixels.width, y: 0.5 + y / pixels.height };
}

/** Through a JPEG file of the given quality, by libjpeg-turbo as sharp carries it. */
export async function recompress(pixels: Pixels, quality: number): Promise<Pixels> {
  const { width, height } = pixels;
  const file = await sharp(Buffer.from(pixels.data.buffer), { raw: { width, height, channels: 4 } })
    .removeAlpha()
    .jpeg({ quality })
    .toBuffer();
  const raw = await sharp(file).ensureAlpha().raw().toBuffer();
  return { width, height, data: new Uint8ClampedArray(raw.buffer, raw.byteOffset, raw.length) };
}

export interface Retake {
  /** Multipliers of linear R, G, B over the whole picture, and once more on the leaf. */
  readonly light: readonly [number, number, number];
  readonly leafLight: readonly [number, number, number];
  /** Sky mirrored by the leaf, added to its linear light. */
  readonly veil: number;
  readonly quality: number;
  readonly turn: Turn;
  /** How far the tap strays, as a share of the root of the leaf's area. */
  readonly tapMoves: readonly [number, number];
}

/** Standard normal (Box and Muller 1958). */
const normal = (random: () => number): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/** Light of a strength and colour: logarithms strayed by the given standard deviations, strength in stops. */
function strayLight(random: () => number, stops: number, colour: number): [number, number, number] {
  const strength = 2 ** (stops * normal(random));
  return [
    strength * Math.exp(colour * normal(random)),
    strength,
    strength * Math.exp(colour * normal(random)),
  ];
}

/**
 * A second shot as likely as any: red and blue strayed against green by 0.15 each over the whole picture, exposure by a third of
 * a stop. In the open the leaf has a light of its own besides (sun on it and shade behind, green shade, the camera's way
 * with greens): by 0.28 and 0.75 of a stop. The two photographs of the same leaves in `papaya-spad` differ by 0.20 and 0.55 of a
 * stop from what the white reference and the ground tell (`training/compare-papaya.ts`); one of them lies on paper, here neither
 * does, which makes it the root of two times as much. So does the sky that a leaf mirrors: 0.02 of full white there, 0.028 here. What would burn the leaf out is taken darker by as much
 * instead, as a camera does. On a sheet the leaf shares the sheet's light but for 0.05 and a seventh of a stop. Quality
 * 50–95, 0.6–1 times the size, any turn, mirrored or not, a tap strayed by a twentieth of the leaf.
 */
export function drawRetake(random: () => number, onSheet: boolean): Retake {
  const light = strayLight(random, 0.33, 0.15);
  const own = onSheet ? strayLight(random, 0.15, 0.05) : strayLight(random, 0.75, 0.28);
  const strength = light[1] * own[1];
  const held = !onSheet && strength > MOST_BRIGHTER ? 1 / strength ** 2 : 1;
  return {
    light,
    leafLight: own.map((v) => v * held) as [number, number, number],
    veil: (onSheet ? 0.004 : 0.028) * normal(random),
    quality: Math.round(50 + 45 * random()),
    turn: { angleDegrees: 360 * random(), scale: 0.6 + 0.4 * random(), mirrored: random() < 0.5 },
    tapMoves: [0.05 * normal(random), 0.05 * normal(random)],
  };
}

/** Light of the leaf up to which a second shot is brighter: a third of a stop. */
const MOST_BRIGHTER = 1.26;

/** Takes the shot; `tap` is moved with the picture and strays with the hand. `leaf` is 255 on the leaf. */
export async function takeAgain(
  pixels: Pixels,
  tap: Spot,
  leaf: Uint8Array,
  retake: Retake,
): Promise<{ pixels: Pixels; tap: Spot }> {
  const ground = relight(pixels, retake.light);
  const on = relight(
    pixels,
    retake.light.map((v, c) => v * retake.leafLight[c]!) as [number, number, number],
    retake.veil,
  );
  let area = 0;
  for (let i = 0; i < leaf.length; i++) {
    if (leaf[i] !== 255) continue;
    area++;
    for (let c = 0; c < 3; c++) ground.data[i * 4 + c] = on.data[i * 4 + c]!;
  }
  const strayed = {
    x: tap.x + (retake.tapMoves[0] * Math.sqrt(area)) / pixels.width,
    y: tap.y + (retake.tapMoves[1] * Math.sqrt(area)) / pixels.height,
  };
  return {
    pixels: await recompress(turnPhoto(ground, retake.turn), retake.quality),
    tap: turnSpot(strayed, pixels, retake.turn),
  };
}
