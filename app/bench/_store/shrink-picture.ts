/** The longer side, in pixels, as the server keeps it. */
const LONGEST_SIDE = 1600;
const QUALITY = 0.85;
/** Smaller pictures are sent as they are. */
const SMALL_BYTES = 600_000;

/** A picture small enough to wait on a phone; the picture itself where the browser cannot draw it. */
export async function shrinkPicture(picture: Blob): Promise<Blob> {
  if (picture.size <= SMALL_BYTES) return picture;
  try {
    const bitmap = await createImageBitmap(picture, { imageOrientation: 'from-image' });
    const scale = Math.min(1, LONGEST_SIDE / Math.max(bitmap.width, bitmap.height));
    const canvas = document.createElement('canvas');
    canvas.width = Math.round(bitmap.width * scale);
    canvas.height = Math.round(bitmap.height * scale);
    canvas.getContext('2d')?.drawImage(bitmap, 0, 0, canvas.width, canvas.height);
    bitmap.close();
    const smaller = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/jpeg', QUALITY));
    return smaller && smaller.size < picture.size ? smaller : picture;
  } catch {
    return picture;
  }
}
