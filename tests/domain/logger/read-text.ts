import { guessLogger, type LoggerGuess } from '@/lib/domain/logger/guess-logger';
import type { LoggerLayout } from '@/lib/domain/logger/logger-layout';
import { type LoggerContents, loggerReader } from '@/lib/domain/logger/read-logger';
import { lineSampler } from '@/lib/domain/logger/sample-lines';

/** 2026-11-25T24:00Z */
export const LATEST = Date.UTC(2026, 10, 26) / 1000;

export function guessText(text: string): Extract<LoggerGuess, { ok: true }> {
  const sampler = lineSampler();
  sampler.push(text);
  const guess = guessLogger(sampler.finish(), LATEST);
  if (!guess.ok) throw new Error(guess.reason);
  return guess;
}

export function readText(text: string, layout: LoggerLayout, pieceLength = 1 << 16): LoggerContents {
  const reader = loggerReader(layout, LATEST);
  for (let at = 0; at < text.length; at += pieceLength) reader.push(text.slice(at, at + pieceLength));
  return reader.finish();
}

/** [instant, degrees C, percent] as a person would write them down. */
export function written({ readings }: LoggerContents): [string, number, number | null][] {
  return Array.from(readings.atEpochSeconds, (at, index) => {
    const humidity = readings.relativeHumidity[index] as number;
    return [
      new Date(at * 1000).toISOString().replace('.000', ''),
      readings.temperatureC[index] as number,
      Number.isNaN(humidity) ? null : Math.round(humidity * 100 * 1e6) / 1e6,
    ];
  });
}

export const problemCounts = ({ problems }: LoggerContents) =>
  Object.fromEntries(problems.map(({ kind, count }) => [kind, count]));
