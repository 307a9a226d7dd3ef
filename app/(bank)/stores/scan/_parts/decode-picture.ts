import { prepareZXingModule, type ReaderOptions, readBarcodes } from 'zxing-wasm/reader';

// The decoder is served from here, never from elsewhere: a seed room may have no internet.
prepareZXingModule({
  overrides: { locateFile: () => new URL('zxing-wasm/reader/zxing_reader.wasm', import.meta.url).href },
});

/** A photograph has more dots than a decoder needs; more than these only take time. */
const MOST_DOTS_ACROSS = 2000;

const OPTIONS: ReaderOptions = { formats: ['QRCode', 'DataMatrix'], maxNumberOfSymbols: 1 };

type Source = HTMLVideoElement | ImageBitmap;

/** Reads pictures one after the other on a canvas of its own, which is never shown. */
export class PictureReader {
  readonly #canvas = document.createElement('canvas');

  /** @returns the text of the code in it, or null */
  async read(source: Source, thorough = false): Promise<string | null> {
    const [width, height] =
      source instanceof HTMLVideoElement ? [source.videoWidth, source.videoHeight] : [source.width, source.height];
    if (width === 0 || height === 0) return null;
    const scale = Math.min(1, MOST_DOTS_ACROSS / Math.max(width, height));
    this.#canvas.width = Math.round(width * scale);
    this.#canvas.height = Math.round(height * scale);
    const context = this.#canvas.getContext('2d', { willReadFrequently: true });
    if (!context) return null;
    context.drawImage(source, 0, 0, this.#canvas.width, this.#canvas.height);
    const picture = context.getImageData(0, 0, this.#canvas.width, this.#canvas.height);
    const found = await readBarcodes(picture, { ...OPTIONS, tryHarder: thorough });
    return found.find((code) => code.isValid)?.text ?? null;
  }
}
