/** What was found wrong in a logger file, by kind, with its first rows. */

export const PROBLEM_KINDS = [
  'no-time',
  'no-value',
  'cut-short',
  'future',
  'too-old',
  'skipped-hour',
  'repeated-hour',
  'impossible-temperature',
  'power-on-value',
  'impossible-humidity',
  'humidity-over-full',
  'out-of-order',
  'same-again',
  'same-time-other-value',
  'jump',
] as const;
export type ProblemKind = (typeof PROBLEM_KINDS)[number];

export interface ProblemRow {
  /** line of the file, from 1 */
  line: number;
  /** column, from 0; null for the whole row */
  column: number | null;
  /** what stands there */
  text: string;
}

export interface LoggerProblem {
  kind: ProblemKind;
  count: number;
  /** the first rows */
  rows: ProblemRow[];
}

const ROWS_KEPT = 5;
const TEXT_KEPT = 80;

export function problemList() {
  const found = new Map<ProblemKind, LoggerProblem>();
  return {
    /** What stands there is given as [from, to) of a text: most rows need no string of it. */
    add(kind: ProblemKind, line: number, column: number | null, text: string, from = 0, to = text.length): void {
      let problem = found.get(kind);
      if (!problem) {
        problem = { kind, count: 0, rows: [] };
        found.set(kind, problem);
      }
      problem.count += 1;
      if (problem.rows.length < ROWS_KEPT) {
        problem.rows.push({ line, column, text: text.slice(from, to).trim().slice(0, TEXT_KEPT) });
      }
    },
    inOrder: (): LoggerProblem[] => PROBLEM_KINDS.flatMap((kind) => found.get(kind) ?? []),
  };
}
