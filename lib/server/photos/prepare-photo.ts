import 'server-only';
import sharp from 'sharp';

/** The longer side, in pixels: a seedling in a dish can still be told. */
const LONGEST_SIDE = 1600;
/** A picture that claims to be larger is not unpacked. */
const MOST_PIXELS = 80_000_000;

export type PreparedPhoto =
  | { ok: true; bytes: Buffer; width: number; height: number }
  /** why not, for whoever took it */
  | { ok: false; message: string };

/**
 * A photograph as it is kept: upright, at most 1600 pixels long, WebP. It is drawn anew, so that nothing else that was in
 * the file (where it was taken, with what phone) is kept.
 *
 * Checked in tests/server/photos/prepare-photo.test.ts
 */
export async function preparePhoto(bytes: Uint8Array): Promise<PreparedPhoto> {
  const kind = kindOf(bytes);
  if (kind === 'heic') {
    return {
      ok: false,
      message:
        'This is a HEIC picture, which cannot be shown everywhere. Set the camera to JPEG (most compatible) and take it again.',
    };
  }
  if (kind === null) return { ok: false, message: 'Only JPEG, PNG and WebP pictures can be kept. Take it again.' };
  try {
    const { data, info } = await sharp(bytes, { limitInputPixels: MOST_PIXELS, failOn: 'truncated' })
      .rotate()
      .resize({ width: LONGEST_SIDE, height: LONGEST_SIDE, fit: 'inside', withoutEnlargement: true })
      .webp({ quality: 80 })
      .toBuffer({ resolveWithObject: true });
    return { ok: true, bytes: data, width: info.width, height: info.height };
  } catch {
    return { ok: false, message: 'This picture is damaged or far too large. Take it again.' };
  }
}

/** By its first bytes: what a sender says of it is not believed. */
function kindOf(bytes: Uint8Array): 'jpeg' | 'png' | 'webp' | 'heic' | null {
  const text = (from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to));
  if (bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff) return 'jpeg';
  if (text(0, 8) === '\x89PNG\r\n\x1a\n') return 'png';
  if (text(0, 4) === 'RIFF' && text(8, 12) === 'WEBP') return 'webp';
  if (text(4, 8) === 'ftyp' && /^(hei|hev|mif1|msf1)/.test(text(8, 12))) return 'heic';
  return null;
}
