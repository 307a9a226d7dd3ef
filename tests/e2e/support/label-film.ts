import { writeFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import { type PrintedPage, renderPdf } from '../../support/labels/render-pdf';

/** A label as a camera sees it: printed, and held before something grey. */
const FRAME = { width: 640, height: 480, grey: 150 };
const FRAMES = 5;
/** Half a millimetre, the square of a code, is five dots. */
const DOTS_PER_INCH = 254;

/** A picture of the first label of a PDF whose pages are labels. */
export async function labelPicture(pdf: Uint8Array): Promise<PrintedPage> {
  const [label] = await renderPdf(pdf, DOTS_PER_INCH);
  if (!label || label.width > FRAME.width || label.height > FRAME.height) throw new Error('no label that fits a frame');
  const grey = new Uint8Array(FRAME.width * FRAME.height).fill(FRAME.grey);
  const left = Math.floor((FRAME.width - label.width) / 2);
  const top = Math.floor((FRAME.height - label.height) / 2);
  for (let y = 0; y < label.height; y++) {
    grey.set(label.grey.subarray(y * label.width, (y + 1) * label.width), (top + y) * FRAME.width + left);
  }
  return { ...label, ...FRAME, grey };
}

/** The picture as a film that Chromium takes for its camera: YUV4MPEG2, grey only. */
export function writeFilm(file: string, { width, height, grey }: PrintedPage): void {
  const colourless = Buffer.alloc((width * height) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), Buffer.from(grey), colourless]);
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F10:1 Ip A1:1 C420jpeg\n`);
  writeFileSync(file, Buffer.concat([head, ...Array.from({ length: FRAMES }, () => frame)]));
}

/** The picture as a photograph somebody takes: PNG, eight bits of grey. */
export function pngOf({ width, height, grey }: PrintedPage): Buffer {
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y++) rows.set(grey.subarray(y * width, (y + 1) * width), y * (width + 1) + 1);
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header[8] = 8;
  const signature = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
  return Buffer.concat([
    signature,
    chunk('IHDR', header),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(type: string, data: Buffer): Buffer {
  const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
  const whole = Buffer.alloc(body.length + 8);
  whole.writeUInt32BE(data.length, 0);
  body.copy(whole, 4);
  whole.writeUInt32BE(crc(body), body.length + 4);
  return whole;
}

/** CRC-32 as PNG demands it. */
function crc(bytes: Buffer): number {
  let value = 0xffffffff;
  for (const byte of bytes) {
    value ^= byte;
    for (let bit = 0; bit < 8; bit++) value = value & 1 ? (value >>> 1) ^ 0xedb88320 : value >>> 1;
  }
  return (value ^ 0xffffffff) >>> 0;
}
