/** Long side of a photograph as it is kept: a seedling of one centimetre in a dish of ten is still 200 pixels long. */
const LONGEST_SIDE = 2000;
const JPEG_QUALITY = 0.85;

/**
 * A photograph made small enough for a slow line, as JPEG, upright. The device's own reader opens it, so that what its
 * camera writes, HEIC for one, is understood where the server would not know it.
 *
 * @throws Error when this browser cannot read the picture
 * Checked in tests/e2e/bench-counting.spec.ts
 */
export async function shrinkPhoto(file: Blob): Promise<Blob> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' });
  const share = Math.min(1, LONGEST_SIDE / Math.max(picture.width, picture.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(picture.width * share));
  canvas.height = Math.max(1, Math.round(picture.height * share));
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('shrinkPhoto: no canvas');
  // What has no colour in a picture with holes would turn black in a JPEG.
  pen.fillStyle = '#fff';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.drawImage(picture, 0, 0, canvas.width, canvas.height);
  picture.close();
  const small = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', JPEG_QUALITY));
  if (!small) throw new Error('shrinkPhoto: no JPEG');
  return small;
}
