import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { addBenchPhoto } from '@/lib/server/commands/add-bench-photo';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { setTrays } from '@/lib/server/commands/set-trays';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { today } from '@/lib/server/today';
import { type Act, volunteer } from './act';
import { ids, type PacketNow, packetsNow } from './bank-now';
import { daySince } from './day-since';

const dishesAtBench = () =>
  connections()
    .rows.prepare<[], { id: string; trayId: string; position: number; setOn: string }>(
      `SELECT d."id", d."trayId", d."position", t."setOn" FROM "TrayDish" d JOIN "Tray" t ON t."id" = d."trayId"
       ORDER BY d."rowid"`,
    )
    .all();

/** Forty seeds at a time; the plan is made again from these. */
const IN_GROUPS = { size: 'groups', line: '0.85', mostSeeds: '400' };

/** Trays that are set and counted. */
export const TRAY_ACTS: Record<string, Act> = {
  'count at the bench': (choose) => {
    const dish = choose.one(dishesAtBench());
    if (!dish) return null;
    const about = { trayId: dish.trayId, on: daySince(choose, dish.setOn) || today() };
    const made = { deviceId: newId(), madeAt: new Date().toISOString() };
    if (choose.whole(0, 4) === 0) {
      const picture = { width: 1600, height: 1200, bytes: 90_000 };
      return volunteer(addBenchPhoto, { id: newId(), ...about, dish: dish.position, ...made, ...picture });
    }
    const before = ids(
      `SELECT "id" FROM "TrayCount" WHERE "dishId" = '${dish.id}' AND "on" = '${about.on}' ORDER BY "rowid"`,
    );
    const count = (replaces: string[]) => ({
      ...{ kind: 'count', id: newId(), ...about, dishId: dish.id, places: null, madeAt: made.madeAt, countedBy: null },
      found: choose.whole(0, 5) === 0 ? null : { ...NOTHING_FOUND, normal: choose.whole(0, 60) },
      replaces,
    });
    const first = count(choose.whole(0, 1) === 0 ? before : []);
    // Now and then one that is corrected before it is sent, and one that comes twice.
    const entries = [first, ...(choose.whole(0, 2) === 0 ? [count([first.id]), first] : [])];
    return volunteer(addBenchEntries, { deviceId: made.deviceId, entries });
  },
  'set trays': (choose) => {
    const packets = packetsNow().filter(({ seeds }) => seeds > 0);
    const first = choose.one(packets);
    if (!first) return null;
    const second = choose.one(packets.filter(({ lotId }) => lotId !== first.lotId));
    // A fixed size now and then takes more than there is: then none of them is set.
    const row = (packet: PacketNow) => ({
      lot: packet.lotNumber,
      seedFrom: `packet:${packet.id}`,
      ...choose.one([{ size: '2x25' }, { size: '4x100' }, IN_GROUPS, IN_GROUPS]),
      finalCountDays: '14',
      anyway: 'on',
    });
    const trays = [first, ...(second && choose.whole(0, 1) === 1 ? [second] : [])].map(row);
    return volunteer(setTrays, { setOn: daySince(choose, first.lastFrom) || today(), trays });
  },
  'give up a tray': (choose) => {
    const trayId = choose.one(ids(`SELECT "id" FROM "Tray" WHERE "status" = 'open' ORDER BY "rowid" DESC LIMIT 3`));
    return trayId === undefined ? null : volunteer(giveUpTray, { trayId, reason: 'mould' });
  },
  'set the next group': (choose) => {
    const seriesId = ids(
      `SELECT "seriesId" FROM "Tray" WHERE "sequentialPlan" IS NOT NULL GROUP BY 1
       ORDER BY SUM("status" = 'open'), "seriesId" DESC LIMIT 1`,
    )[0];
    const [lotId] = ids(`SELECT "lotId" FROM "Tray" WHERE "seriesId" = '${seriesId}'`);
    const packet = choose.one(packetsNow().filter((one) => one.lotId === lotId));
    if (seriesId === undefined || !packet) return null;
    return volunteer(setNextGroup, { seriesId, seedFrom: `packet:${packet.id}`, setOn: today() });
  },
};
