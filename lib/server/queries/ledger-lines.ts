import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { reader } from '../database/connections';
import { NAMED_BY_TESTS, testNaming, wentIntoGivenUpTray } from '../named-by-tests';
import { namesOf } from './names-of';

/** One line of a ledger, with everything that a screen says of it. */
export interface LedgerLine {
  id: string;
  on: string;
  reason: string;
  /** signed */
  seeds: number;
  grams: number | null;
  /** how far `seeds` may be off; null when nobody knows */
  seedsSd: number | null;
  note: string | null;
  byName: string | null;
  recordedAt: Date;
  packetNumber: string;
  lotNumber: string;
  accessionName: string;
  /** the counter-entry that takes this line back */
  takenBackOn: string | null;
  /** the line that this one takes back */
  corrects: { on: string; reason: string; seeds: number } | null;
  /** what it belongs to: number of a test or of its tray, of another test of seed, a stock-take, a request */
  belongsTo: {
    kind: 'test' | 'viability-test' | 'moisture-test' | 'stock-take' | 'request';
    number: string;
  } | null;
  mayBeTakenBack: boolean;
}

export const LEDGER_LINE = {
  id: true,
  on: true,
  reason: true,
  seeds: true,
  grams: true,
  seedsSd: true,
  note: true,
  byId: true,
  recordedAt: true,
  pairId: true,
  corrected: { select: { on: true } },
  corrects: { select: { on: true, reason: true, seeds: true } },
  ...NAMED_BY_TESTS,
  stockTake: { select: { number: true } },
  request: { select: { number: true } },
  packet: {
    select: { number: true, lot: { select: { number: true, accession: { select: { name: true } } } } },
  },
} as const satisfies Prisma.MovementSelect;

export type SelectedLine = Prisma.MovementGetPayload<{ select: typeof LEDGER_LINE }>;

/** Lines with these ids, in this order: two statements, however many there are. */
export async function readLedgerLines(ids: string[]): Promise<LedgerLine[]> {
  const found = await reader().movement.findMany({ where: { id: { in: ids } }, select: LEDGER_LINE });
  const place = new Map(ids.map((id, index) => [id, index]));
  return asLedgerLines(found.sort((a, b) => (place.get(a.id) ?? 0) - (place.get(b.id) ?? 0)));
}

/** Shapes lines read with `LEDGER_LINE`. */
export async function asLedgerLines(lines: SelectedLine[]): Promise<LedgerLine[]> {
  const names = await namesOf(lines.map((line) => line.byId));
  return lines.map(({ byId, packet, corrected, pairId, ...selected }) => {
    const { test, tray, moistureTest, viabilityTest, stockTake, request, ...line } = selected;
    return {
      ...line,
      byName: names.get(byId) ?? null,
      packetNumber: packet.number,
      lotNumber: packet.lot.number,
      accessionName: packet.lot.accession.name,
      takenBackOn: corrected?.on ?? null,
      belongsTo: belonging(selected),
      mayBeTakenBack:
        (corrected === null && wentIntoGivenUpTray(selected)) ||
        mayBeTakenBack({ ...line, pairId, takenBack: corrected !== null, used: testNaming(selected) }),
    };
  });
}

type Belonging = Pick<SelectedLine, keyof typeof NAMED_BY_TESTS | 'stockTake' | 'request'>;

function belonging(of: Belonging): LedgerLine['belongsTo'] {
  // A tray has the number of the test that it becomes.
  const test = of.test ?? of.tray;
  if (test) return { kind: 'test', number: test.number };
  if (of.viabilityTest) return { kind: 'viability-test', number: of.viabilityTest.number };
  if (of.moistureTest) return { kind: 'moisture-test', number: of.moistureTest.number };
  if (of.stockTake) return { kind: 'stock-take', number: of.stockTake.number };
  return of.request ? { kind: 'request', number: of.request.number } : null;
}

/** As far as the line itself tells; that the seed is still there, and was not counted since, the command looks up. */
function mayBeTakenBack(line: {
  reason: string;
  note: string | null;
  pairId: string | null;
  takenBack: boolean;
  used: { number: string } | null;
}): boolean {
  if (line.takenBack || line.reason === 'correction') return false;
  if (line.used) return false;
  if (line.reason === 'test') return isFreeForTest({ ...line, usedBy: 0 });
  return line.pairId !== null || (line.reason !== 'split' && line.reason !== 'merge');
}
