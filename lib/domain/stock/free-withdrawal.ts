/** Tests wrote this before they named the line by which their seed went out. */
const NOTE_OF_A_TEST = /^Germination test /;

/**
 * Whether seed taken out for a test is still free to be named by one, or to be taken back.
 *
 * @param line.reason  of the ledger's line
 * @param line.note    of it
 * @param line.usedBy  tests of any kind that name it
 * @param line.takenBack  by a counter-entry
 * @returns false for lines that are no withdrawals for a test
 * Checked in tests/domain/stock/free-withdrawal.test.ts
 */
export function isFreeForTest(line: {
  reason: string;
  note: string | null;
  usedBy: number;
  takenBack: boolean;
}): boolean {
  return line.reason === 'test' && line.usedBy === 0 && !line.takenBack && !NOTE_OF_A_TEST.test(line.note ?? '');
}
