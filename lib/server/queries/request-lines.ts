import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { PacketRole } from '@/lib/domain/stock/packet-roles';
import type { OwnSeed } from '@/lib/domain/stock/seed-to-spare';
import { type SharingHindrance, sharingHindrance } from '@/lib/domain/stock/sharing-hindrance';
import type { SharingTermsKey } from '@/lib/domain/stock/sharing-terms';
import { connections } from '../database/connections';
import { regrowingNeeds } from '../judging/regrowing-needs';
import { today } from '../today';

export interface SharingPacket {
  id: string;
  number: string;
  role: PacketRole;
  seeds: number;
  storeName: string | null;
  targetTemperatureC: number | null;
}

/** A line of a request, with all that decides whether it can be sent and all that stands on the pack list. */
export interface RequestLine {
  id: string;
  position: number;
  seeds: number | null;
  note: string | null;
  accession: {
    id: string;
    number: string;
    name: string;
    cropName: string;
    sharing: SharingTermsKey;
    sharingTerms: string | null;
  };
  lot: {
    id: string;
    number: string;
    harvestedOn: string;
    isolation: string;
    treatment: string | null;
    thousandSeedWeightG: number | null;
  } | null;
  packet: SharingPacket | null;
  /** all packets of the lot, those to draw from first */
  packets: SharingPacket[];
  own: OwnSeed;
  /** seeds that must stay for regrowing it; Infinity when no number is enough, null without a forecast */
  forRegrowing: number | null;
  /** what stands against sending it today; null for a line that was sent */
  hindrance: SharingHindrance | null;
  /** its line in the ledger, once sent */
  movement: { id: string; on: string; seeds: number; grams: number | null; takenBackOn: string | null } | null;
}

/**
 * The lines of a request in order: as many statements however many there are. Takes a transaction or the reader, so that a
 * page and the command that sends look at the same figures.
 *
 * Checked in tests/server/commands/sharing-requests.test.ts
 */
export async function loadRequestLines(db: Prisma.TransactionClient, requestId: string): Promise<RequestLine[]> {
  const lines = await db.sharingLine.findMany({
    where: { requestId },
    orderBy: { position: 'asc' },
    select: {
      id: true,
      position: true,
      seeds: true,
      note: true,
      packetId: true,
      accession: {
        select: {
          id: true,
          number: true,
          name: true,
          sharing: true,
          sharingTerms: true,
          crop: { select: { name: true } },
        },
      },
      lot: {
        select: {
          id: true,
          number: true,
          harvestedOn: true,
          isolation: true,
          treatment: true,
          thousandSeedWeightG: true,
          packets: {
            orderBy: { number: 'asc' },
            select: {
              id: true,
              number: true,
              role: true,
              placements: {
                orderBy: [{ from: 'desc' }, { id: 'desc' }],
                take: 1,
                select: { store: { select: { name: true, targetTemperatureC: true } } },
              },
            },
          },
        },
      },
      movement: {
        select: { id: true, on: true, seeds: true, grams: true, corrected: { select: { on: true } } },
      },
    },
  });
  const packetIds = lines.flatMap((line) => (line.lot?.packets ?? []).map((packet) => packet.id));
  const sums = await db.movement.groupBy({
    by: ['packetId'],
    where: { packetId: { in: [...new Set(packetIds)] } },
    _sum: { seeds: true },
  });
  const lotIds = lines.flatMap((line) => (line.lot ? [line.lot.id] : []));
  const needs = regrowingNeeds(connections().rows, lotIds, today());
  const heldBy = new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));

  const shaped = lines.map(({ accession, lot, movement, packetId, ...line }): RequestLine => {
    const packets = (lot?.packets ?? [])
      .map(({ placements, role, ...packet }): SharingPacket => {
        const store = placements[0]?.store;
        return {
          ...packet,
          role: role as PacketRole,
          seeds: heldBy.get(packet.id) ?? 0,
          storeName: store?.name ?? null,
          targetTemperatureC: store?.targetTemperatureC ?? null,
        };
      })
      .sort(drawnFromFirst);
    const { crop, sharing, ...named } = accession;
    return {
      ...line,
      accession: { ...named, sharing: sharing as SharingTermsKey, cropName: crop.name },
      lot: lot && {
        id: lot.id,
        number: lot.number,
        harvestedOn: lot.harvestedOn,
        isolation: lot.isolation,
        treatment: lot.treatment,
        thousandSeedWeightG: lot.thousandSeedWeightG,
      },
      packet: packets.find((packet) => packet.id === packetId) ?? null,
      packets,
      own: ownSeed(packets),
      forRegrowing: (lot && needs.get(lot.id)) ?? null,
      hindrance: null,
      movement: movement && {
        id: movement.id,
        on: movement.on,
        seeds: -movement.seeds,
        grams: movement.grams === null ? null : -movement.grams,
        takenBackOn: movement.corrected?.on ?? null,
      },
    };
  });
  return shaped.map((line) => ({ ...line, hindrance: line.movement ? null : hindranceOf(line, shaped) }));
}

/** Seeds in the bank's own packets: safety duplicates are not counted. */
export function ownSeed(packets: readonly { role: string; seeds: number }[]): OwnSeed {
  const sum = (role: string) =>
    packets.filter((packet) => packet.role === role).reduce((total, packet) => total + packet.seeds, 0);
  return { active: sum('active'), base: sum('base') };
}

/** Active stock before the rest, the fullest packet first. */
export const drawnFromFirst = (a: { role: string; seeds: number }, b: { role: string; seeds: number }): number =>
  Number(b.role === 'active') - Number(a.role === 'active') || b.seeds - a.seeds;

function hindranceOf(line: RequestLine, all: readonly RequestLine[]): SharingHindrance | null {
  const others = all.filter((other) => other.id !== line.id);
  const seedsOf = (some: readonly RequestLine[]) => some.reduce((sum, other) => sum + (other.seeds ?? 0), 0);
  return sharingHindrance({
    sharing: line.accession.sharing,
    own: line.own,
    forRegrowing: line.forRegrowing,
    packet: line.packet,
    seeds: line.seeds,
    otherSeedsOfLot: seedsOf(others.filter((other) => other.lot !== null && other.lot.id === line.lot?.id)),
    otherSeedsOfPacket: seedsOf(others.filter((other) => other.packet !== null && other.packet.id === line.packet?.id)),
  });
}
