/** What shows that a file is being read wrongly as a whole: then nothing of it is imported. */
import type { LoggerProblem, ProblemKind } from './logger-problems';

/** A few foreign rows are usual; more of them mean that the columns are wrong. */
const MOST_UNREADABLE = 0.2;

/**
 * @param rows      rows of the table
 * @param readings  readings that came of them
 * @param problems  from loggerReader
 * @returns sentences that say what is wrong and what to do; none when the file may be imported
 * Checked in tests/domain/logger/file-blockers.test.ts
 */
export function fileBlockers(rows: number, readings: number, problems: readonly LoggerProblem[]): string[] {
  const found = (kind: ProblemKind) => problems.find((problem) => problem.kind === kind);
  const line = (problem: LoggerProblem) => `line ${problem.rows[0]?.line}: ${problem.rows[0]?.text}`;
  const blockers: string[] = [];
  const future = found('future');
  if (future) {
    blockers.push(
      `${future.count} readings lie in the future (${line(future)}). Check the order of day and month and the time zone; if they are right, the logger's clock was wrong.`,
    );
  }
  const skipped = found('skipped-hour');
  if (skipped) {
    blockers.push(
      `${skipped.count} readings stand in the hour that clocks skip in spring (${line(skipped)}): this logger's clock was not put forward. Choose its fixed winter time, such as UTC+01:00.`,
    );
  }
  const noTime = found('no-time');
  if (rows > 0 && (noTime?.count ?? 0) > MOST_UNREADABLE * rows && noTime) {
    blockers.push(
      `${noTime.count} of ${rows} rows have no date and time that can be read (${line(noTime)}). Check the columns and the order of day and month.`,
    );
  }
  if (readings === 0) blockers.push('No reading was found with these columns.');
  return blockers;
}
