import type { Prisma } from '@/generated/prisma/client';

const number = { select: { number: true } } as const;

/** Records of every kind that may name a line of the ledger as the seed they used: add a kind here and everyone knows it. */
export const NAMED_BY_TESTS = {
  test: number,
  tray: { select: { number: true, status: true } },
  moistureTest: number,
  viabilityTest: number,
} as const satisfies Prisma.MovementSelect;

/** Lines that none of them names. */
export const NAMED_BY_NO_TEST = {
  test: null,
  tray: null,
  moistureTest: null,
  viabilityTest: null,
} as const satisfies Record<keyof typeof NAMED_BY_TESTS, null>;

/** The test, or tray, that a line's seed went into; null when no one says. */
export function testNaming(line: Record<keyof typeof NAMED_BY_TESTS, { number: string } | null>) {
  return line.test ?? line.tray ?? line.moistureTest ?? line.viabilityTest;
}

/**
 * Whether a line's seed went into a tray that was given up: such a line, and no other that a test names, may be taken back
 * where the seed was put back into its packet.
 */
export function wentIntoGivenUpTray(line: { test: unknown; tray: { status: string } | null }): boolean {
  return line.tray?.status === 'given-up' && line.test === null;
}
