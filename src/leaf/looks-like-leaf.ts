import type { LabPlanes } from '../photo/convert-pixels-to-lab.ts';
import type { FoundLeaf } from './find-leaf.ts';
import { judgePlantColour } from './judge-plant.ts';

/**
 * Whether what was outlined can be a leaf at all. A tap is believed more readily: whoever taps a brown leaf knows that it
 * is one. Bounds set on `other/not-a-leaf` against all leaf sets.
 */
export function looksLikeLeaf(lab: LabPlanes, leaf: FoundLeaf, wasTapped: boolean): boolean {
  let n = 0;
  let green = 0;
  let odd = 0;
  let vivid = 0;
  let a = 0;
  let b = 0;
  let chroma = 0;
  const stride = Math.max(1, Math.floor(leaf.outline.length / 100_000));
  for (let i = 0; i < leaf.outline.length; i += stride) {
    if (leaf.outline[i] !== 255) continue;
    n++;
    const la = lab.a[i]!;
    const lb = lab.b[i]!;
    green += judgePlantColour(la, lb);
    const c = Math.hypot(la, lb);
    a += la;
    b += lb;
    chroma += c;
    const hue = (Math.atan2(lb, la) * 180) / Math.PI;
    if (c > 55 && hue > -120 && hue < 62) vivid++;
    else if (hue > 20 && hue < 95 && c > 8 && c < (hue > 60 ? 75 : 50)) odd++;
    else if (c > 8 && c < 45 && hue > -70 && hue < 20) odd++;
    // Leaves in blue shade turn teal; the sky is bluer.
    else if (c < 35 && (hue > 170 || hue < -128)) odd++;
  }
  if (n === 0) return false;
  const { contrast, weakest, onRim, agreed = 1, solid } = leaf.score;
  const greenShare = green / n;
  // 1 when all colours point the same way; a rainbow or a bunch of things does not.
  const oneHue = Math.hypot(a, b) / Math.max(1e-6, chroma);
  if (vivid > 0.3 * n) return false;
  // Sand and boards: hardly a plant's colour and not what the network would call a leaf; or softly bounded and cut by the frame.
  const isGround = (agreed < 0.25 && greenShare < 0.5) || (contrast < 0.6 && onRim > 0.6);
  if (wasTapped) return !isGround && contrast > 0.35 && (greenShare > 0.1 || odd > 0.3 * n || chroma / n > 8);
  // Ragged, and not what the network would call one leaf: a thing of a leaf's colour, a bush, a meadow.
  if (agreed < 0.4 || (agreed < 0.65 && solid < 0.85)) return false;
  if (contrast < 0.55 || weakest < 0.12) return false;
  if (onRim > 0.65 || (oneHue < 0.9 && chroma / n > 45)) return false;
  return greenShare > 0.25 || (greenShare + odd / n > 0.6 && contrast > 0.9);
}
