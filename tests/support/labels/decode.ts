import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { prepareZXingModule, readBarcodes } from 'zxing-wasm/reader';

const wasm = readFileSync(createRequire(import.meta.url).resolve('zxing-wasm/reader/zxing_reader.wasm'));
prepareZXingModule({ overrides: { wasmBinary: wasm.buffer.slice(wasm.byteOffset, wasm.byteOffset + wasm.length) } });

export interface GreyImage {
  width: number;
  height: number;
  grey: Uint8Array;
}

/** The texts of all QR codes and Data Matrix codes in a picture, by a decoder that is not ours. */
export async function decodeCodes({ width, height, grey }: GreyImage, most = 1): Promise<string[]> {
  const data = new Uint8ClampedArray(4 * grey.length);
  for (let dot = 0; dot < grey.length; dot++) data.fill(grey[dot] ?? 255, 4 * dot, 4 * dot + 3);
  for (let dot = 0; dot < grey.length; dot++) data[4 * dot + 3] = 255;
  const found = await readBarcodes({ data, width, height, colorSpace: 'srgb' } as ImageData, {
    formats: ['QRCode', 'DataMatrix'],
    maxNumberOfSymbols: most,
    tryHarder: true,
  });
  return found.filter((code) => code.isValid).map((code) => code.text);
}

/** A piece of a picture. */
export function cutOut(image: GreyImage, left: number, top: number, width: number, height: number): GreyImage {
  const grey = new Uint8Array(width * height).fill(255);
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const from = { x: left + x, y: top + y };
      const inside = from.x >= 0 && from.y >= 0 && from.x < image.width && from.y < image.height;
      if (inside) grey[y * width + x] = image.grey[from.y * image.width + from.x] ?? 255;
    }
  }
  return { width, height, grey };
}
