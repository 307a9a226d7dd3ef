import type { Prisma } from '@/generated/prisma/client';
import { choicesFor, effectOf, type Finding, type StockTakeDecision } from '@/lib/domain/stock/stock-take-difference';
import { closeStockTakeSchema } from '@/lib/schemas/stock-take';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { packetsThere } from '../stores/stock-take-packets';
import { type CommandContext, defineCommand } from './command';
import { fieldError } from './field-error';
import { requireSafePlacement } from './require-safe-placement';
import { roleAtPlace } from './role-at-place';
import { type OpenStockTake, openStockTake, storesInside } from './stock-take-in-hand';
import { decisionField, takeOverDecisions } from './take-over-decisions';

/**
 * Ends a stock-take: what was decided about its differences enters the ledger, in one go or not at all. A difference
 * counts from the balance when the packet was looked at, so that seed taken out since, with an entry, is not lost twice.
 */
export const closeStockTake = defineCommand({
  name: 'close-stock-take',
  role: 'steward',
  schema: closeStockTakeSchema,
  async run(context, input) {
    const { tx, today, audit, rejudge } = context;
    const take = await openStockTake(tx, input.stockTakeId);
    await takeOverDecisions(tx, take.id, input.decisions);
    const inside = await storesInside(tx, take.storeId);
    const lines = await readLines(tx, take.id);
    await refuseUnfinished(tx, take, lines, input.closeUnfinished);

    const refused: Record<string, string> = {};
    const lots = new Set<string>();
    const done = { corrected: 0, lost: 0, moved: 0 };
    for (const line of lines) {
      const outcome = await settle(context, take, line, inside);
      if (typeof outcome === 'string') {
        // Counted after the review was opened: the form has no box for it.
        if (!(line.id in input.decisions))
          throw new AppError('conflict', `${line.packet.number}: ${outcome} Load the page again.`);
        refused[decisionField(line.id)] = outcome;
        continue;
      }
      if (outcome.written > 0) lots.add(line.packet.lot.id);
      done.corrected += outcome.corrected;
      done.lost += outcome.lost;
      done.moved += outcome.moved;
    }
    if (Object.keys(refused).length > 0) throw fieldError(refused);

    await tx.stockTake.update({
      where: { id: take.id },
      data: { status: 'closed', closedOn: today, version: { increment: 1 } },
    });
    if (lots.size > 0) rejudge([...lots]);
    await audit({
      entity: 'stock-take',
      entityId: take.id,
      summary: `Closed stock-take ${take.number} of ${take.storeName}: ${lines.length} packets looked at, ${done.corrected} corrected, ${done.lost} written off, ${done.moved} placed here`,
    });
    return { number: take.number };
  },
});

const readLines = (tx: Prisma.TransactionClient, stockTakeId: string) =>
  tx.stockTakeLine.findMany({
    where: { stockTakeId },
    orderBy: { id: 'asc' },
    select: {
      id: true,
      finding: true,
      expectedSeeds: true,
      seeds: true,
      seedsSd: true,
      grams: true,
      decision: true,
      at: true,
      packet: {
        select: {
          id: true,
          number: true,
          role: true,
          lot: { select: { id: true, number: true, accession: { select: { cropId: true } } } },
          placements: {
            orderBy: [{ from: 'desc' }, { id: 'desc' }],
            take: 1,
            select: { storeId: true, from: true, container: true, moisturePercent: true },
          },
          // Movements are few a packet; what was written since it was looked at adds to what is unsure.
          movements: { select: { seeds: true, seedsSd: true, recordedAt: true } },
        },
      },
    },
  });
type Line = Awaited<ReturnType<typeof readLines>>[number];

async function refuseUnfinished(
  tx: Prisma.TransactionClient,
  take: OpenStockTake,
  lines: Line[],
  closeUnfinished: boolean,
): Promise<void> {
  if (closeUnfinished) return;
  const lookedAt = new Set(lines.map((line) => line.packet.id));
  const left = (await packetsThere(tx, take.storeId)).filter(({ packetId }) => !lookedAt.has(packetId)).length;
  if (left === 0) return;
  throw fieldError({
    closeUnfinished: `${left} ${left === 1 ? 'packet was' : 'packets were'} not looked at. Tick this to close all the same: ${left === 1 ? 'it stays as it is' : 'they stay as they are'}.`,
  });
}

interface Settled {
  written: number;
  corrected: number;
  lost: number;
  moved: number;
}

/** Writes what the decision about one line says; a sentence when it cannot be. */
async function settle(
  context: CommandContext,
  take: OpenStockTake,
  line: Line,
  inside: Set<string>,
): Promise<Settled | string> {
  const { tx, person, today, audit } = context;
  const { packet } = line;
  const [last] = packet.placements;
  const lookedAt = {
    finding: line.finding as Finding,
    expectedSeeds: line.expectedSeeds,
    seeds: line.seeds,
    belongsHere: last !== undefined && inside.has(last.storeId),
  };
  const choices = choicesFor(lookedAt);
  // What was decided before the packet was moved or looked at again may be no choice any more.
  const decision = choices.find((choice) => choice === line.decision) ?? null;
  if (choices.length > 0 && decision === null) return 'Choose what to do about this difference.';
  const { movements, movesHere } = effectOf(lookedAt, decision as StockTakeDecision | null);

  const held = packet.movements.reduce((sum, { seeds }) => sum + seeds, 0);
  const change = movements.reduce((sum, { seeds }) => sum + seeds, 0);
  if (held + change < 0) {
    return `Since it was looked at, ${line.expectedSeeds - held} seeds were taken out of it, so ${-change} cannot be missing: look at the packet again.`;
  }
  if (movesHere) {
    const refusal = await placeHere(context, take, packet, last);
    if (refusal) return refusal;
  }
  for (const { reason, seeds } of movements) {
    await tx.movement.create({
      data: {
        id: newId(),
        packetId: packet.id,
        on: today,
        reason,
        seeds,
        seedsSd: reason === 'count' ? spreadNow(line) : 0,
        note: noteOf(take, line, reason),
        byId: person.id,
        stockTakeId: take.id,
      },
    });
  }
  if (movements.length > 0) {
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `${take.number}: packet ${packet.number} of lot ${packet.lot.number} ${inWords(movements)}`,
      before: { seeds: held },
      after: { seeds: held + change },
    });
  }
  const corrected = movements.some(({ reason, seeds }) => reason === 'count' && seeds !== 0);
  const lost = movements.some(({ reason }) => reason === 'loss');
  return {
    written: movements.length + Number(movesHere),
    corrected: Number(corrected),
    lost: Number(lost),
    moved: Number(movesHere),
  };
}

/** How far the count may be off by now: what came in or went out since it has a spread of its own. */
function spreadNow(line: Line): number {
  const since = line.packet.movements.filter(({ recordedAt }) => recordedAt > line.at);
  return Math.sqrt(since.reduce((sum, { seedsSd }) => sum + (seedsSd ?? 0) ** 2, (line.seedsSd ?? 0) ** 2));
}

function noteOf(take: OpenStockTake, line: Line, reason: 'count' | 'loss'): string {
  if (reason === 'loss' && line.finding === 'not-here') return `${take.number}: not there`;
  return `${take.number}: counted ${line.seeds}, ledger ${line.expectedSeeds}${line.grams === null ? '' : `; weighed ${line.grams} g`}`;
}

function inWords(movements: { reason: 'count' | 'loss'; seeds: number }[]): string {
  return movements
    .filter(({ reason, seeds }) => reason === 'loss' || seeds !== 0 || movements.length === 1)
    .map(({ reason, seeds }) => {
      if (reason === 'loss') return `lost ${-seeds} seeds`;
      return seeds === 0 ? 'counted, as expected' : `corrected by ${seeds > 0 ? '+' : ''}${seeds} seeds`;
    })
    .join(', ');
}

/** Puts a packet that was found here where it was found; a sentence when it cannot be. */
async function placeHere(
  { tx, today, audit }: CommandContext,
  take: OpenStockTake,
  packet: Line['packet'],
  last: Line['packet']['placements'][number] | undefined,
): Promise<string | null> {
  if (!last) return 'Nobody knows in what it is packed: move it from its own page.';
  if (today < last.from) return `It is to lie elsewhere from ${last.from} on: move it from its own page.`;
  const { container, moisturePercent } = last;
  try {
    // It lies here already: that the store is full or the seed moist is no reason not to write it down.
    const place = await requireSafePlacement(tx, {
      storeId: take.storeId,
      from: today,
      container,
      moisturePercent,
      cropId: packet.lot.accession.cropId,
      presentStoreId: last.storeId,
      storeAnyway: true,
      overfill: true,
    });
    const role = roleAtPlace(packet.role, place);
    if (role !== packet.role) await tx.packet.update({ where: { id: packet.id }, data: { role } });
  } catch (error) {
    if (error instanceof AppError && error.fieldErrors.storeId) return error.fieldErrors.storeId;
    throw error;
  }
  await tx.placement.create({
    data: { id: newId(), packetId: packet.id, storeId: take.storeId, from: today, container, moisturePercent },
  });
  await audit({
    entity: 'packet',
    entityId: packet.id,
    summary: `${take.number}: packet ${packet.number} of lot ${packet.lot.number} lies in ${take.storeName} from ${today} on`,
    before: { storeId: last.storeId },
    after: { storeId: take.storeId },
  });
  return null;
}
