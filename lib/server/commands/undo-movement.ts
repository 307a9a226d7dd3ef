import type { Prisma } from '@/generated/prisma/client';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { MOVEMENT_REASON_LABELS, type MovementReason } from '@/lib/domain/stock/movement-reasons';
import { undoMovementSchema } from '@/lib/schemas/movement';
import { AppError, notFound } from '../app-error';
import { NAMED_BY_TESTS, testNaming, wentIntoGivenUpTray } from '../named-by-tests';
import { newId } from '../new-id';
import { type CommandContext, defineCommand } from './command';
import { packetBalance } from './packet-balance';

/**
 * Takes back a line of a packet's ledger by a counter-entry that names it. Both lines stay. The two lines of a split or
 * merge are taken back together, or not at all.
 */
export const undoMovement = defineCommand({
  name: 'undo-movement',
  role: 'volunteer',
  schema: undoMovementSchema,
  async run(context, input) {
    const asked = await readLine(context.tx, { id: input.movementId });
    if (!asked) throw notFound('This entry');
    refuseLine(asked);
    const lines = asked.pairId === null ? [asked] : await readPair(context.tx, asked.pairId);
    for (const line of lines) await refuseBeforeCount(context.tx, line);
    for (const line of lines) await takeBack(context, line, input.note);
    context.rejudge([...new Set(lines.map((line) => line.packet.lot.id))]);
    return { lotNumber: asked.packet.lot.number, packetNumber: asked.packet.number };
  },
});

const LINE = {
  id: true,
  on: true,
  reason: true,
  seeds: true,
  grams: true,
  seedsSd: true,
  note: true,
  packetId: true,
  pairId: true,
  corrected: { select: { id: true } },
  ...NAMED_BY_TESTS,
  packet: { select: { number: true, lot: { select: { id: true, number: true } } } },
} as const;

const readLine = (tx: Prisma.TransactionClient, where: { id: string }) =>
  tx.movement.findUnique({ where, select: LINE });
type Line = NonNullable<Awaited<ReturnType<typeof readLine>>>;

async function readPair(tx: Prisma.TransactionClient, pairId: string): Promise<Line[]> {
  const lines = await tx.movement.findMany({ where: { pairId }, orderBy: { id: 'asc' }, select: LINE });
  for (const line of lines) refuseLine(line);
  return lines;
}

function refuseLine(line: Line): void {
  if (line.corrected) throw new AppError('conflict', 'This entry was taken back already.');
  if (line.reason === 'correction') {
    throw new AppError('refused', 'This entry takes back another one. Enter the movement again instead.');
  }
  if (wentIntoGivenUpTray(line)) return;
  const user = testNaming(line);
  if (user && user === line.tray) {
    throw new AppError('refused', `This seed lies in tray ${user.number}: give up the tray first, if it was put back.`);
  }
  if (user) {
    throw new AppError('refused', `This seed went into ${user.number}: correct the test, and the seed follows.`);
  }
  if (line.reason === 'test' && !isFreeForTest({ ...line, usedBy: 0, takenBack: false })) {
    throw new AppError('refused', 'This seed went into a germination test: correct the test, and the seed follows.');
  }
  if (line.pairId === null && (line.reason === 'split' || line.reason === 'merge')) {
    throw new AppError(
      'refused',
      'This entry is from before both sides of a split were kept together, so it cannot be taken back alone. Merge the two packets instead.',
    );
  }
}

/** A count has said what was there, this line included: taking the line back now would make the count wrong. */
async function refuseBeforeCount(tx: Prisma.TransactionClient, line: Line): Promise<void> {
  const count = await tx.movement.findFirst({
    where: { packetId: line.packetId, reason: 'count', id: { gt: line.id }, corrected: null },
    orderBy: { id: 'desc' },
    select: { on: true },
  });
  if (!count) return;
  throw new AppError(
    'refused',
    `Packet ${line.packet.number} was counted on ${count.on}, after this entry: what was found then holds. If that is wrong, count it again.`,
  );
}

async function takeBack(
  { tx, person, today, audit }: CommandContext,
  line: Line,
  note: string | undefined,
): Promise<void> {
  const { packet } = line;
  const held = await packetBalance(tx, line.packetId);
  if (held < line.seeds) {
    const what = line.pairId === null ? 'the packet' : `packet ${packet.number}`;
    throw new AppError(
      'refused',
      `Only ${held} of these ${line.seeds} seeds are still in ${what}. Take back what was taken out since, first.`,
    );
  }
  await tx.movement.create({
    data: {
      id: newId(),
      packetId: line.packetId,
      on: today,
      reason: 'correction',
      // 0 - n, because -0 is no number of seeds
      seeds: 0 - line.seeds,
      grams: line.grams === null ? null : 0 - line.grams,
      seedsSd: line.seedsSd,
      note,
      byId: person.id,
      correctsId: line.id,
    },
  });
  const reason = MOVEMENT_REASON_LABELS[line.reason as MovementReason];
  await audit({
    entity: 'packet',
    entityId: line.packetId,
    summary: `Took back the ${reason} of ${Math.abs(line.seeds)} seeds on ${line.on}, packet ${packet.number} of lot ${packet.lot.number}`,
    before: { seeds: held },
    after: { seeds: held - line.seeds },
  });
}
