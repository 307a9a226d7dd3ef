import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { reader } from '../database/connections';
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
  /** what it belongs to: number of a test, a moisture test, a stock-take, a request */
  belongsTo: { kind: 'test' | 'moisture-test' | 'stock-take' | 'request'; number: string } | null;
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
  test: { select: { number: true } },
  moistureTest: { select: { number: true } },
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
  return lines.map(({ byId, packet, corrected, test, moistureTest, stockTake, request, pairId, ...line }) => ({
    ...line,
    byName: names.get(byId) ?? null,
    packetNumber: packet.number,
    lotNumber: packet.lot.number,
    accessionName: packet.lot.accession.name,
    takenBackOn: corrected?.on ?? null,
    belongsTo: belonging({ test, moistureTest, stockTake, request }),
    mayBeTakenBack: mayBeTakenBack({ ...line, pairId, takenBack: corrected !== null, used: test ?? moistureTest }),
  }));
}

function belonging(of: Pick<SelectedLine, 'test' | 'moistureTest' | 'stockTake' | 'request'>): LedgerLine['belongsTo'] {
  if (of.test) return { kind: 'test', number: of.test.number };
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
