import type { LoggerContents } from '@/lib/domain/logger/read-logger';
import { readingGaps } from '@/lib/domain/logger/reading-gaps';
import type { ReadingReport } from '@/lib/schemas/reading-import';
import type { AddedReadings } from './add-readings';

/** What is kept of a file that was read: what was in it, and what the store made of it. */
export function reportOf(
  { readings, rows, newestFirst, problems }: LoggerContents,
  added: AddedReadings,
): ReadingReport {
  const { atEpochSeconds } = readings;
  const { usualIntervalSeconds, ...gaps } = readingGaps(atEpochSeconds);
  return {
    rows,
    readings: atEpochSeconds.length,
    firstAt: atEpochSeconds[0] ?? null,
    lastAt: atEpochSeconds.at(-1) ?? null,
    newestFirst,
    usualIntervalSeconds,
    gaps,
    problems,
    ...added,
  };
}
