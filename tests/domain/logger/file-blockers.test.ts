import { expect, it } from 'vitest';
import { fileBlockers } from '@/lib/domain/logger/file-blockers';
import type { LoggerProblem, ProblemKind } from '@/lib/domain/logger/logger-problems';

const problem = (kind: ProblemKind, count: number): LoggerProblem => ({
  kind,
  count,
  rows: [{ line: 7, column: 0, text: 'x' }],
});

it('a clock that is wrong stops the file, naming the line', () => {
  expect(fileBlockers(100, 99, [problem('future', 1)])[0]).toMatch(/1 readings lie in the future \(line 7: x\)/);
  expect(fileBlockers(100, 98, [problem('skipped-hour', 2)])[0]).toContain('winter time');
});

it('a few foreign rows do not, many do', () => {
  expect(fileBlockers(100, 80, [problem('no-time', 20), problem('no-value', 90), problem('jump', 90)])).toEqual([]);
  expect(fileBlockers(100, 79, [problem('no-time', 21)])).toHaveLength(1);
});

it('a file without a reading is none', () => {
  expect(fileBlockers(0, 0, [])).toEqual(['No reading was found with these columns.']);
});
