import type { Prisma } from '@/generated/prisma/client';
import type { Person } from '../auth/roles';
import { newId } from '../new-id';
import type { AuditRecord } from './command';
import { nextTestNumber } from './next-test-number';
import { type SeedForTray, takeSeedForTray } from './seed-for-tray';

/** A tray as it is set, all of it checked. */
export interface TrayToWrite {
  lot: { id: string; number: string };
  seed: SeedForTray;
  /** seeds of each dish */
  dishes: readonly number[];
  /** the first group's id and this one's number; null: it begins a series, or stands alone */
  series: { id: string; groupNumber: number } | null;
  setOn: string;
  substrate: string | null;
  temperatures: string | null;
  light: boolean;
  preTreatment: string | null;
  prechillDays: number;
  firstCountOn: string;
  finalCountOn: string;
  countEveryDays: number | null;
  place: string | null;
  notes: string | null;
  sequentialPlan: string | null;
}

/** Gives a tray its number, takes its seed out of the ledger and lays out its dishes, with an entry for tray and packet. */
export async function writeTray(
  { tx, person, audit }: { tx: Prisma.TransactionClient; person: Person; audit(entry: AuditRecord): Promise<void> },
  tray: TrayToWrite,
): Promise<{ id: string; number: string }> {
  const { lot, seed, dishes, series, ...set } = tray;
  const id = newId();
  const number = await nextTestNumber(tx);
  const withdrawalId = await takeSeedForTray(tx, seed, { on: set.setOn, number, byId: person.id });
  await tx.tray.create({
    data: {
      ...set,
      id,
      number,
      lotId: lot.id,
      packetId: seed.packet.id,
      withdrawalId,
      seriesId: series?.id ?? id,
      groupNumber: series?.groupNumber ?? 1,
      byId: person.id,
    },
  });
  await tx.trayDish.createMany({
    data: dishes.map((seeds, index) => ({ id: newId(), trayId: id, position: index + 1, seeds })),
  });
  const { packet, seeds, held, takenOut } = seed;
  await audit({
    entity: 'packet',
    entityId: packet.id,
    summary: takenOut
      ? `${takenOut.seeds} seeds taken out of ${packet.number} on ${takenOut.on} went into tray ${number}`
      : `${seeds} seeds taken out of ${packet.number} for tray ${number}; ${(held ?? 0) - seeds} left`,
    ...(held === null ? {} : { before: { seeds: held }, after: { seeds: held - seeds } }),
  });
  await audit({
    entity: 'tray',
    entityId: id,
    summary: `Set tray ${number} of lot ${lot.number}: ${seeds} seeds in ${dishes.length} dishes${
      series ? `, group ${series.groupNumber}` : ''
    }`,
    after: { number, lot: lot.number, packet: packet.number, dishes, ...set },
  });
  return { id, number };
}
