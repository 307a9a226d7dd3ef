import 'server-only';
import { guessLogger, type LoggerGuess } from '@/lib/domain/logger/guess-logger';
import type { LoggerLayout } from '@/lib/domain/logger/logger-layout';
import { type LoggerContents, loggerReader } from '@/lib/domain/logger/read-logger';
import { lineSampler } from '@/lib/domain/logger/sample-lines';
import { textPieces } from '@/lib/domain/spreadsheet/decode-text';
import { latestInstant } from './latest-instant';

/** Read at once: some milliseconds, after which the server looks after other visitors. */
const PIECE_BYTES = 256 * 1024;

export const giveWay = () => new Promise<void>((resolve) => setImmediate(resolve));

/** The layout that a logger file's lines suggest. */
export async function guessLoggerFile(bytes: Uint8Array): Promise<LoggerGuess> {
  const sampler = lineSampler();
  for (const piece of textPieces(bytes, PIECE_BYTES)) {
    sampler.push(piece);
    await giveWay();
  }
  return guessLogger(sampler.finish(), latestInstant());
}

/** @param onProgress  told how many of the bytes are read */
export async function readLoggerFile(
  bytes: Uint8Array,
  layout: LoggerLayout,
  onProgress?: (bytesRead: number) => void,
): Promise<LoggerContents> {
  const reader = loggerReader(layout, latestInstant());
  let read = 0;
  for (const piece of textPieces(bytes, PIECE_BYTES)) {
    reader.push(piece);
    read = Math.min(bytes.length, read + PIECE_BYTES);
    onProgress?.(read);
    await giveWay();
  }
  return reader.finish();
}
