import { readLeaf } from '../../leaf/read-leaf.ts';
import { decodeInBrowser } from '../../photo/decode-in-browser.ts';
import { type DecodedPhoto, PhotoError } from '../../photo/types.ts';
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

let wasAsked = false;

async function answer(request: PhotoRequest): Promise<Served<PhotoReply>> {
  wasAsked = true;
  const { photoId, picture, role, taps, file } = request;
  const { pixels, takenAt } = await decode(photoId, picture);
  const { reading, tissues } = readLeaf(pixels, {
    role,
    taps,
    ...(file === undefined ? {} : { file }),
    ...(takenAt === undefined ? {} : { takenAt }),
  });
  const layers = tissues && layLayers(tissues);
  const thumbnail = request.wantThumbnail ? await makeThumbnail(pixels) : undefined;
  return {
    reply: { ok: true, reading, ...(layers ? { layers } : {}), ...(thumbnail ? { thumbnail } : {}) },
    transfer: layers ? [layers.data.buffer as ArrayBuffer] : [],
  };
}

serve<PhotoRequest, PhotoReply>(self as unknown as ServedPort, answer, (cause) => {
  if (cause instanceof PhotoError) return { ok: false, code: cause.code };
  console.error('photo could not be read', cause);
  return { ok: false, code: 'failed' };
});

practise(() => wasAsked);
