import type { Prisma } from '@/generated/prisma/client';
import { seedToSpare } from '@/lib/domain/stock/seed-to-spare';
import { addRequestLineSchema } from '@/lib/schemas/sharing-request';
import { connections } from '../database/connections';
import { regrowingNeeds } from '../judging/regrowing-needs';
import { newId } from '../new-id';
import { drawnFromFirst, ownSeed } from '../queries/request-lines';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { requireOpenRequest } from './open-request';

/** Seeds offered where nobody said how many: a small planting of most crops. Our choice; every line can be changed. */
export const SEEDS_OFFERED = 50;

interface AddedLine {
  requestNumber: string;
  lotNumber: string;
  seeds: number;
  /** of the request, with this line */
  version: number;
}

/** Puts a lot on the list of what goes to somebody, from the fullest packet of its active stock. */
export const addRequestLine = defineCommand({
  name: 'add-request-line',
  role: 'volunteer',
  schema: addRequestLineSchema,
  async run({ tx, today, audit }, input): Promise<AddedLine> {
    const request = await requireOpenRequest(tx, input.requestId);
    const lot = await findLot(tx, input.lot);
    if (lot.accession.sharing === 'not') {
      const why = lot.accession.sharingTerms ? `: ${lot.accession.sharingTerms}` : '.';
      throw fieldError({ lot: `${lot.accession.name} (${lot.accession.number}) may not be shared${why}` });
    }
    const taken = await tx.sharingLine.findMany({
      where: { requestId: request.id },
      orderBy: { position: 'desc' },
      select: { position: true, packetId: true, lotId: true },
    });
    const packets = await packetsOf(tx, lot.id);
    const free = packets.filter((one) => one.seeds > 0 && !taken.some((line) => line.packetId === one.id));
    const packet = free.filter((one) => one.role === 'active').sort(drawnFromFirst)[0];
    if (!packet) {
      throw fieldError({
        lot: taken.some((line) => line.lotId === lot.id)
          ? `${lot.number} is on this list already.`
          : `No active stock of ${lot.number} is left. Base stock and safety duplicates are not drawn from: split some off first.`,
      });
    }
    if (input.seeds !== undefined && input.seeds > packet.seeds) {
      throw fieldError({ seeds: `Packet ${packet.number} holds about ${packet.seeds} seeds.` });
    }
    const forRegrowing = regrowingNeeds(connections().rows, [lot.id], today).get(lot.id) ?? null;
    const spare = seedToSpare({ ...ownSeed(packets), forRegrowing });
    const atMost = spare.ok && spare.spare > 0 ? spare.spare : packet.seeds;
    const seeds = input.seeds ?? Math.min(SEEDS_OFFERED, packet.seeds, atMost);
    await tx.sharingLine.create({
      data: {
        id: newId(),
        requestId: request.id,
        position: (taken[0]?.position ?? 0) + 1,
        accessionId: lot.accession.id,
        lotId: lot.id,
        packetId: packet.id,
        seeds,
        note: input.note,
      },
    });
    const { version } = await tx.sharingRequest.update({
      where: { id: request.id },
      data: { version: { increment: 1 } },
      select: { version: true },
    });
    await audit({
      entity: 'sharing request',
      entityId: request.id,
      summary: `Put ${seeds} seeds of lot ${lot.number} on request ${request.number}, from packet ${packet.number}`,
    });
    return { requestNumber: request.number, lotNumber: lot.number, seeds, version };
  },
});

async function findLot(tx: Prisma.TransactionClient, typed: string) {
  const select = {
    id: true,
    number: true,
    accession: { select: { id: true, number: true, name: true, sharing: true, sharingTerms: true } },
  } as const;
  const exact = await tx.lot.findUnique({ where: { number: typed }, select });
  if (exact) return exact;
  const [match] = await tx.$queryRaw<{ id: string }[]>`
    SELECT "id" FROM "Lot" WHERE "number" = ${typed} COLLATE NOCASE LIMIT 1`;
  if (!match) throw fieldError({ lot: `No lot has the number “${typed}”. Check the label, or look it up below.` });
  return tx.lot.findUniqueOrThrow({ where: { id: match.id }, select });
}

async function packetsOf(tx: Prisma.TransactionClient, lotId: string) {
  const packets = await tx.packet.findMany({ where: { lotId }, select: { id: true, number: true, role: true } });
  const sums = await tx.movement.groupBy({
    by: ['packetId'],
    where: { packet: { lotId } },
    _sum: { seeds: true },
  });
  const held = new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));
  return packets.map((packet) => ({ ...packet, seeds: held.get(packet.id) ?? 0 }));
}
