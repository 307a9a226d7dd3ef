import type { Prisma } from '@/generated/prisma/client';
import { recordStockTakeLineSchema } from '@/lib/schemas/stock-take';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { type CommandContext, defineCommand } from './command';
import { packetBalance } from './packet-balance';
import { seedsInGrams } from './seeds-in-grams';
import { StaleVersion } from './stale-version';
import { openStockTake } from './stock-take-in-hand';

/**
 * Writes down what was found of one packet, with the balance of this moment: here or not, and its seeds where they were
 * counted or weighed. One line a packet; whoever writes over somebody else's is told first.
 */
export const recordStockTakeLine = defineCommand({
  name: 'record-stock-take-line',
  role: 'volunteer',
  schema: recordStockTakeLineSchema,
  async run({ tx, person, audit }, input) {
    const take = await openStockTake(tx, input.stockTakeId);
    const packet = await tx.packet.findUnique({
      where: { id: input.packetId },
      select: { id: true, number: true, lot: { select: { id: true, thousandSeedWeightG: true } } },
    });
    if (!packet) throw notFound('This packet');
    const where = { stockTakeId_packetId: { stockTakeId: take.id, packetId: packet.id } };
    const line = await tx.stockTakeLine.findUnique({ where });
    if ((line?.version ?? 0) !== input.version) await refuseOverwriting(tx, packet.number, line);
    const found = {
      finding: input.finding,
      expectedSeeds: await packetBalance(tx, packet.id),
      ...(await amountOf(tx, packet, input.amount)),
      decision: null,
      byId: person.id,
      at: new Date(),
    };
    const saved = await tx.stockTakeLine.upsert({
      where,
      create: { id: newId(), stockTakeId: take.id, packetId: packet.id, ...found },
      update: { ...found, version: { increment: 1 } },
    });
    await auditLine(audit, take, packet.number, saved);
    const { version, finding, expectedSeeds, seeds, grams } = saved;
    return { stockTakeNumber: take.number, packetId: packet.id, version, finding, expectedSeeds, seeds, grams };
  },
});

interface Found {
  finding: string;
  seeds: number | null;
  grams: number | null;
}

async function amountOf(
  tx: Prisma.TransactionClient,
  packet: { lot: { id: string; thousandSeedWeightG: number | null } },
  amount: { seeds: number } | { grams: number } | null,
): Promise<{ seeds: number | null; seedsSd: number | null; grams: number | null }> {
  if (amount === null) return { seeds: null, seedsSd: null, grams: null };
  if ('seeds' in amount) return { seeds: amount.seeds, seedsSd: 0, grams: null };
  return { ...(await seedsInGrams(tx, packet, amount.grams)), grams: amount.grams };
}

/** What was found, in words that stand behind a packet's number. */
function foundInWords({ finding, seeds, grams }: Found): string {
  if (finding === 'not-here') return 'not here';
  if (seeds === null) return 'here';
  return `${seeds} seeds${grams === null ? '' : ` (${grams} g)`}`;
}

async function refuseOverwriting(
  tx: Prisma.TransactionClient,
  packetNumber: string,
  line: (Found & { version: number; byId: string }) | null,
): Promise<never> {
  if (!line) {
    throw new StaleVersion(`The line of ${packetNumber} was taken out meanwhile. Enter it again to keep yours.`, 0);
  }
  const by = await tx.user.findUnique({ where: { id: line.byId }, select: { name: true } });
  throw new StaleVersion(
    `${by?.name ?? 'Somebody else'} wrote down ${packetNumber} meanwhile: ${foundInWords(line)}. Enter yours again to put it in place of theirs.`,
    line.version,
  );
}

const auditLine = (
  audit: CommandContext['audit'],
  take: { id: string; number: string },
  packetNumber: string,
  line: Found & { expectedSeeds: number },
) =>
  audit({
    entity: 'stock-take',
    entityId: take.id,
    summary: `${take.number}: ${packetNumber} ${foundInWords(line)}; the ledger says ${line.expectedSeeds}`,
  });
