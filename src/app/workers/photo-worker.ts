import { cutCrop, type LeafCrop } from '../../classifier/cut-crop.ts';
import { readLeaf } from '../../leaf/read-leaf.ts';
import type { LeafAnalysis } from '../../leaf/types.ts';
import { decodeInBrowser } from '../../photo/decode-in-browser.ts';
import { scaleToWorkingFrame } from '../../photo/scale-to-working-frame.ts';
import { type DecodedPhoto, PhotoError, type Pixels } from '../../photo/types.ts';
import { isSilenced } from '../../signs/findings-from-readings.ts';
import { layLayers } from './lay-layers.ts';
import { makeThumbnail } from './make-thumbnail.ts';
import { practise } from './practise.ts';
import type { PhotoReply, PhotoRequest } from './protocol.ts';
import { type Served, type ServedPort, serve } from './serve.ts';

/** Taps follow each other on one photo, so the working frame of the last one is kept: 4 MB at most. */
let lastDecoded: { photoId: string; photo: DecodedPhoto } | undefined;

async function decode(photoId: string, picture: Blob): Promise<DecodedPhoto> {
  if (lastDecoded?.photoId === photoId) return lastDecoded.photo;
  lastDecoded = undefined;
  const photo = await decodeInBrowser(picture);
  lastDecoded = { photoId, photo };
  return photo;
}

/** What the network is shown of a photo; nothing where the camera keeps silent on its colours too. */
const cropOf = (frame: Pixels, { reading, mask }: LeafAnalysis): LeafCrop | undefined =>
  mask && !isSilenced(reading) ? cutCrop(frame, mask.data) : undefined;

let wasAsked = false;

async function answer(request: PhotoRequest): Promise<Served<PhotoReply>> {
  wasAsked = true;
  const { photoId, picture, role, taps, file } = request;
  const { pixels, takenAt } = await decode(photoId, picture);
  const frame = scaleToWorkingFrame(pixels);
  const analysis = readLeaf(frame, {
    role,
    taps,
    ...(file === undefined ? {} : { file }),
    ...(takenAt === undefined ? {} : { takenAt }),
  });
  const { reading, tissues } = analysis;
  const layers = tissues && layLayers(tissues);
  const thumbnail = request.wantThumbnail ? await makeThumbnail(pixels) : undefined;
  const crop = request.wantCrop ? cropOf(frame, analysis) : undefined;
  return {
    reply: {
      ok: true,
      reading,
      ...(layers ? { layers } : {}),
      ...(thumbnail ? { thumbnail } : {}),
      ...(crop ? { crop } : {}),
    },
    transfer: layers ? [layers.data.buffer as ArrayBuffer] : [],
  };
}

serve<PhotoRequest, PhotoReply>(self as unknown as ServedPort, answer, (cause) => {
  if (cause instanceof PhotoError) return { ok: false, code: cause.code };
  console.error('photo could not be read', cause);
  return { ok: false, code: 'failed' };
});

practise(() => wasAsked);
