import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { recordedResult, VIABILITY_KINDS, type ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { ViabilityTestResult } from '@/lib/domain/germination/dormancy/viability-test';
import { reader } from '../database/connections';
import type { Page } from './germination-tests';

/** One line of a list of tetrazolium and cut tests. */
export interface ViabilityTestRow {
  number: string;
  kind: ViabilityKind;
  testedOn: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  /** the germination test whose seed left over was examined */
  trayNumber: string | null;
  result: ViabilityTestResult;
  /** number of the test that corrects this one */
  correctedByNumber: string | null;
}

export const VIABILITY_TESTS_PER_PAGE = 30;

/** The columns that say what was found. */
export const SELECT_COUNTS = {
  stainedNormally: true,
  stainedAbnormally: true,
  unstained: true,
  firm: true,
  empty: true,
  insectDamaged: true,
  dead: true,
} as const satisfies Prisma.ViabilityTestSelect;

const ROW = {
  number: true,
  kind: true,
  testedOn: true,
  ...SELECT_COUNTS,
  tray: { select: { number: true } },
  correctedBy: { select: { number: true } },
  lot: { select: { number: true, accession: { select: { name: true, crop: { select: { name: true } } } } } },
} as const satisfies Prisma.ViabilityTestSelect;

/**
 * Tetrazolium and cut tests of the bank, newest first; those corrected since too.
 *
 * Checked in tests/server/queries/viability-tests.test.ts
 */
export async function findViabilityTests(asked: { page: number }): Promise<Page<ViabilityTestRow>> {
  const total = await reader().viabilityTest.count();
  const pages = Math.max(1, Math.ceil(total / VIABILITY_TESTS_PER_PAGE));
  const page = Math.min(asked.page, pages);
  const found = await reader().viabilityTest.findMany({
    orderBy: [{ testedOn: 'desc' }, { id: 'desc' }],
    skip: (page - 1) * VIABILITY_TESTS_PER_PAGE,
    take: VIABILITY_TESTS_PER_PAGE,
    select: ROW,
  });
  return { rows: found.map(asRow), total, page, pages };
}

/** A lot's tetrazolium and cut tests, newest first, without those corrected since. */
export async function findViabilityTestsOfLot(lotId: string): Promise<ViabilityTestRow[]> {
  const found = await reader().viabilityTest.findMany({
    where: { lotId, correctedBy: null },
    orderBy: [{ testedOn: 'desc' }, { id: 'desc' }],
    select: ROW,
  });
  return found.map(asRow);
}

/** A choice column as one of its members; anything else would be a fault of ours. */
export function viabilityKind(stored: string): ViabilityKind {
  const kind = VIABILITY_KINDS.find((known) => known === stored);
  if (!kind) throw new Error(`no viability test is called ${stored}`);
  return kind;
}

function asRow({ lot, tray, correctedBy, kind, ...test }: Prisma.ViabilityTestGetPayload<{ select: typeof ROW }>) {
  return {
    number: test.number,
    kind: viabilityKind(kind),
    testedOn: test.testedOn,
    lotNumber: lot.number,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    trayNumber: tray?.number ?? null,
    result: recordedResult(viabilityKind(kind), test),
    correctedByNumber: correctedBy?.number ?? null,
  };
}
