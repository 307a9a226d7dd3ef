import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import type { Person } from '@/lib/server/auth/roles';
import type { Command } from '@/lib/server/commands/command';
import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { movePacket } from '@/lib/server/commands/move-packet';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections } from '@/lib/server/database/connections';
import { today } from '@/lib/server/today';
import { VOLUNTEER } from '../people';
import type { Chooser } from './chooser';

/** What somebody is about to do to the bank as it is now. Some of it is refused, as in life. */
export interface Attempt {
  command: Command<unknown>;
  person: Person;
  input: Record<string, unknown>;
}

/** Chooses an attempt; null where the bank has nothing to do it to. */
export type Act = (choose: Chooser) => Attempt | null;

interface PacketNow {
  id: string;
  lotId: string;
  lotNumber: string;
  seeds: number;
  lastFrom: string;
}

export function packetsNow(): PacketNow[] {
  return connections()
    .rows.prepare<[], PacketNow>(
      `SELECT p."id", p."lotId", l."number" AS "lotNumber",
         (SELECT COALESCE(SUM("seeds"), 0) FROM "Movement" WHERE "packetId" = p."id") AS "seeds",
         (SELECT MAX("from") FROM "Placement" WHERE "packetId" = p."id") AS "lastFrom"
       FROM "Packet" p JOIN "Lot" l ON l."id" = p."lotId" ORDER BY p."rowid"`,
    )
    .all();
}

const ids = (sql: string): string[] => connections().rows.prepare<[], string>(sql).pluck().all();
const openStores = () => ids(`SELECT "id" FROM "Store" WHERE "closedOn" IS NULL ORDER BY "rowid"`);
const volunteer = (command: Command<unknown>, input: Record<string, unknown>): Attempt => ({
  command,
  person: VOLUNTEER,
  input,
});

/** Today, or a day since `earliest`. */
function daySince(choose: Chooser, earliest: string): string {
  if (choose.whole(0, 1) === 0) return '';
  return addDays(earliest, choose.whole(0, Math.max(0, daysBetween(earliest, today()))));
}

const placementFields = (choose: Chooser) => ({
  storeId: choose.one(openStores()) ?? '',
  container: choose.one(['glass-jar', 'foil-pouch', 'paper-envelope', 'screw-cap-tube']),
  moisturePercent: choose.one(['5', '6,5', '8', '']),
});

/** Everything that hands do to packets, by the name of the command. New commands are added here. */
export const ACTS: Record<string, Act> = {
  'take-seed-out': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    // Now and then more than there is: a refusal must leave nothing behind.
    const amount = choose.whole(1, Math.max(1, Math.ceil(packet.seeds * 0.4)) + (choose.whole(0, 9) === 9 ? 5000 : 0));
    const reason = choose.one(['sowing', 'sharing', 'discard', 'loss']);
    return volunteer(takeSeedOut, { packetId: packet.id, amount: String(amount), unit: 'seeds', reason });
  },
  'move-packet': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const from = daySince(choose, packet.lastFrom);
    return volunteer(movePacket, { packetId: packet.id, from, ...placementFields(choose) });
  },
  'split-packet': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(splitPacket, {
      packetId: packet.id,
      seeds: String(choose.whole(1, Math.max(1, packet.seeds))),
      role: choose.one(['active', 'base', 'safety-duplicate']),
      from: daySince(choose, packet.lastFrom),
      ...placementFields(choose),
    });
  },
  'undo-movement': (choose) => {
    const movementId = choose.one(
      ids(`SELECT m."id" FROM "Movement" m WHERE m."reason" <> 'correction'
        AND NOT EXISTS (SELECT 1 FROM "Movement" c WHERE c."correctsId" = m."id") ORDER BY m."rowid" DESC LIMIT 8`),
    );
    return movementId ? volunteer(undoMovement, { movementId }) : null;
  },
  'log-cleaned-lot': (choose) => {
    const accession = choose.one(ids(`SELECT "number" FROM "Accession" ORDER BY "rowid"`));
    if (!accession) return null;
    const storedOn = addDays('2021-10-01', choose.whole(0, 1800));
    return volunteer(logCleanedLot, {
      accession,
      harvestedOn: addDays(storedOn, -30),
      isolation: 'cage',
      seedCount: String(choose.whole(500, 4000)),
      storedOn,
      ...placementFields(choose),
    });
  },
  'record-germination-test': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const finishedOn = addDays(packet.lastFrom, Math.min(daysBetween(packet.lastFrom, today()), 14));
    return volunteer(recordGerminationTest, {
      lot: packet.lotNumber,
      packetId: packet.id,
      takeSeed: 'on',
      setOn: packet.lastFrom,
      finishedOn,
      replicates: [0, 1].map(() => ({ seeds: '50', normal: String(choose.whole(25, 48)), abnormal: '1' })),
    });
  },
};

/** Does it, as the person, through the command itself. */
export const perform = ({ command, person, input }: Attempt): Promise<unknown> => command(person, input);

/** Any act, chosen. Acts that make seed are rarer than acts that use it. */
export function chooseAttempt(choose: Chooser, names: readonly string[] = Object.keys(ACTS)): Attempt | null {
  return ACTS[choose.one(names) ?? '']?.(choose) ?? null;
}
