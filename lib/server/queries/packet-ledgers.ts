import 'server-only';
import { balanceUncertainty, lotUncertainty, type UncertainBalance } from '@/lib/domain/stock/balance-uncertainty';
import { reader } from '../database/connections';
import { asLedgerLines, LEDGER_LINE, type LedgerLine } from './ledger-lines';

/** A packet's ledger in the order in which it was written, each line with what the packet held after it. */
export interface PacketLedger {
  lines: (LedgerLine & { balance: number })[];
  held: UncertainBalance;
}

/**
 * Whole ledgers of some packets, by packet id: three statements, however many there are.
 *
 * Checked in tests/server/queries/ledger.test.ts
 */
export async function getPacketLedgers(packetIds: string[]): Promise<Map<string, PacketLedger>> {
  const found = await reader().movement.findMany({
    where: { packetId: { in: packetIds } },
    // As recorded: the ledger is a history of entries, whatever day each is about.
    orderBy: { id: 'asc' },
    select: { ...LEDGER_LINE, packetId: true, correctsId: true },
  });
  const weighable = await packetsOfWeighedLots(packetIds);
  const shown = await asLedgerLines(found);
  const ledgers = new Map<string, PacketLedger>();
  for (const packetId of packetIds) {
    const indexes = found.flatMap((line, index) => (line.packetId === packetId ? [index] : []));
    let balance = 0;
    const lines = indexes.map((index) => {
      const line = shown[index] as LedgerLine;
      balance += line.seeds;
      return { ...line, balance };
    });
    const spreads = indexes.map((index) => found[index] as (typeof found)[number]);
    ledgers.set(packetId, { lines, held: balanceUncertainty(spreads, { lotHasSeedWeight: weighable.has(packetId) }) });
  }
  return ledgers;
}

async function packetsOfWeighedLots(packetIds: string[]): Promise<Set<string>> {
  const packets = await reader().packet.findMany({
    where: { id: { in: packetIds }, lot: { thousandSeedWeightG: { not: null } } },
    select: { id: true },
  });
  return new Set(packets.map(({ id }) => id));
}

/** What a lot holds in all its packets, with a band. */
export async function getLotBalance(lot: {
  id: string;
  thousandSeedWeightG: number | null;
}): Promise<UncertainBalance> {
  const lines = await reader().movement.findMany({
    where: { packet: { lotId: lot.id } },
    orderBy: { id: 'asc' },
    select: { id: true, packetId: true, reason: true, seeds: true, grams: true, seedsSd: true, correctsId: true },
  });
  const packetIds = [...new Set(lines.map((line) => line.packetId))];
  const ledgers = packetIds.map((packetId) => lines.filter((line) => line.packetId === packetId));
  return lotUncertainty(ledgers, { lotHasSeedWeight: lot.thousandSeedWeightG !== null });
}
