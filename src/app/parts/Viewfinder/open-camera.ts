import type { CameraTrouble } from '../../words/viewfinder.ts';

/**
 * Starts the camera on the far side of the device where there is one, at the largest size it gives.
 *
 * @throws `DOMException` as the browser gives it; `troubleOf` names it
 */
export const openCamera = (): Promise<MediaStream> =>
  navigator.mediaDevices.getUserMedia({
    audio: false,
    video: { facingMode: { ideal: 'environment' }, width: { ideal: 4096 }, height: { ideal: 3072 } },
  });

/** Names of the errors: W3C "Media Capture and Streams", getUserMedia. */
export function troubleOf(cause: unknown): CameraTrouble {
  const name = cause instanceof Error ? cause.name : '';
  if (name === 'NotAllowedError' || name === 'SecurityError') return 'refused';
  return name === 'NotReadableError' || name === 'AbortError' ? 'taken' : 'none';
}

/** W3C "MediaStream Image Capture"; the types of the browser do not know it yet. */
interface WithTorch {
  readonly torch?: boolean;
}

/** Does the camera have a light that can be left on? */
export function hasTorch(stream: MediaStream): boolean {
  const track = stream.getVideoTracks()[0];
  return (track?.getCapabilities?.() as WithTorch | undefined)?.torch === true;
}

/** Turns the camera's light on or off. `false` where it does not obey. */
export async function shine(stream: MediaStream, on: boolean): Promise<boolean> {
  try {
    const torch = { advanced: [{ torch: on } as MediaTrackConstraintSet] };
    await stream.getVideoTracks()[0]?.applyConstraints(torch);
    return true;
  } catch {
    return false;
  }
}

export function closeCamera(stream: MediaStream | undefined): void {
  for (const track of stream?.getTracks() ?? []) track.stop();
}

/** Some cameras never answer when they are asked for a photo: then the frame on the screen is taken. */
const PHOTO_LIMIT_MS = 4000;
const JPEG_QUALITY = 0.95;

/** W3C "MediaStream Image Capture"; not in every browser. */
interface PhotoTaker {
  takePhoto(): Promise<Blob>;
}
type PhotoTakerMaker = new (track: MediaStreamTrack) => PhotoTaker;

/**
 * One photo at the camera's full size, or, where the browser cannot ask for that, the frame of the film.
 *
 * @throws when neither gives a picture
 */
export async function takePhoto(video: HTMLVideoElement, stream: MediaStream): Promise<File> {
  const picture = (await photoFrom(stream).catch(() => undefined)) ?? (await frameFrom(video));
  const ending = picture.type === 'image/png' ? 'png' : 'jpg';
  return new File([picture], `photo.${ending}`, { type: picture.type || 'image/jpeg' });
}

async function photoFrom(stream: MediaStream): Promise<Blob | undefined> {
  const track = stream.getVideoTracks()[0];
  const Taker = (globalThis as { ImageCapture?: PhotoTakerMaker }).ImageCapture;
  if (!track || !Taker) return undefined;
  const late = new Promise<undefined>((settle) => setTimeout(settle, PHOTO_LIMIT_MS));
  return Promise.race([new Taker(track).takePhoto(), late]);
}

async function frameFrom(video: HTMLVideoElement): Promise<Blob> {
  const canvas = new OffscreenCanvas(video.videoWidth, video.videoHeight);
  const context = canvas.getContext('2d');
  if (!context) throw new Error('no drawing surface');
  context.drawImage(video, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY });
}
