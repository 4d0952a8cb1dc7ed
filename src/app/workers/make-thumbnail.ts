const LONGEST_SIDE_PX = 480;
const JPEG_QUALITY = 0.82;

/** A small copy for lists; without the file's own notes, so without place. `undefined` where it cannot be made. */
export async function makeThumbnail(picture: Blob): Promise<Blob | undefined> {
  try {
    const whole = await createImageBitmap(picture, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_SIDE_PX / Math.max(whole.width, whole.height));
    const width = Math.max(1, Math.round(whole.width * scale));
    const height = Math.max(1, Math.round(whole.height * scale));
    const canvas = new OffscreenCanvas(width, height);
    const context = canvas.getContext('2d');
    if (!context) return undefined;
    context.fillStyle = '#ffffff';
    context.fillRect(0, 0, width, height);
    context.imageSmoothingQuality = 'high';
    context.drawImage(whole, 0, 0, width, height);
    whole.close();
    return await canvas.convertToBlob({ type: 'image/jpeg', quality: JPEG_QUALITY });
  } catch {
    return undefined;
  }
}
