import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { type BenchDish, dishStates } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { choicesFor, type Finding } from '@/lib/domain/stock/stock-take-difference';
import type { Person } from '@/lib/server/auth/roles';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { addBenchPhoto } from '@/lib/server/commands/add-bench-photo';
import { addRequestLine } from '@/lib/server/commands/add-request-line';
import { changePacketRole } from '@/lib/server/commands/change-packet-role';
import { closeStockTake } from '@/lib/server/commands/close-stock-take';
import { closeTray } from '@/lib/server/commands/close-tray';
import type { Command } from '@/lib/server/commands/command';
import { createRequest } from '@/lib/server/commands/create-request';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { importReadings } from '@/lib/server/commands/import-readings';
import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { mergePackets } from '@/lib/server/commands/merge-packets';
import { movePacket } from '@/lib/server/commands/move-packet';
import { moveStore } from '@/lib/server/commands/move-store';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { recordStockTakeLine } from '@/lib/server/commands/record-stock-take-line';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { sendRequest } from '@/lib/server/commands/send-request';
import { setNextGroup } from '@/lib/server/commands/set-next-group';
import { setTrays } from '@/lib/server/commands/set-trays';
import { settleCount } from '@/lib/server/commands/settle-count';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { startStockTake } from '@/lib/server/commands/start-stock-take';
import { takeBackReadings } from '@/lib/server/commands/take-back-readings';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { updateStore } from '@/lib/server/commands/update-store';
import { uploadReadings } from '@/lib/server/commands/upload-readings';
import { writeTrayCounts } from '@/lib/server/commands/write-tray-counts';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { today } from '@/lib/server/today';
import { writtenCount } from '@/lib/server/trays/count-row';
import { seenCounts } from '@/lib/server/trays/seen-counts';
import { LOGGER_TEXT_LAYOUT, loggerText } from '../logger-text';
import { STEWARD, VOLUNTEER } from '../people';
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

const ids = (sql: string): string[] => connections().rows.prepare<[], unknown>(sql).pluck().all().map(String);
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

const CONTAINERS = ['glass-jar', 'foil-pouch', 'paper-envelope', 'screw-cap-tube'] as const;

/** Where and how seed is put; the warnings are ticked away. */
const placementFields = (choose: Chooser) => ({
  storeId: choose.one(openStores()) ?? '',
  container: choose.one(CONTAINERS),
  moisturePercent: choose.one(['5', '6,5', '8', '']),
  storeAnyway: 'on',
  overfill: 'on',
});

function packingFields(choose: Chooser) {
  const { storeId: _nowhere, ...packing } = placementFields(choose);
  const seals = packing.container !== 'paper-envelope';
  return {
    ...packing,
    sealed: seals && choose.whole(0, 1) === 1 ? 'on' : undefined,
    desiccant: choose.one(['', '', 'silica-gel']),
  };
}

interface StoreNow {
  id: string;
  name: string;
  kind: string;
  version: number;
  parentId: string | null;
}

const storesNow = () =>
  connections()
    .rows.prepare<[], StoreNow>(`SELECT "id", "name", "kind", "version", "parentId" FROM "Store" ORDER BY "rowid"`)
    .all();

const openRequest = () =>
  connections()
    .rows.prepare<[], { id: string; version: number; lines: number }>(
      `SELECT r."id", r."version", COUNT(l."id") AS "lines" FROM "SharingRequest" r
       LEFT JOIN "SharingLine" l ON l."requestId" = r."id" WHERE r."status" = 'open' GROUP BY r."id" ORDER BY r."rowid"`,
    )
    .get();

interface StockTakeLineNow {
  id: string;
  packetId: string;
  version: number;
  finding: Finding;
  expectedSeeds: number;
  seeds: number | null;
  /** 1 where the packet's last placement is in the store or inside it */
  belongsHere: number;
}

export const stockTakeLines = ({ id, storeId }: { id: string; storeId: string }): StockTakeLineNow[] =>
  connections()
    .rows.prepare<[string, string], StockTakeLineNow>(
      `WITH RECURSIVE inside(id) AS (
         SELECT ? UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id)
       SELECT l."id", l."packetId", l."version", l."finding", l."expectedSeeds", l."seeds",
         (SELECT pl."storeId" FROM "Placement" pl WHERE pl."packetId" = l."packetId"
          ORDER BY pl."from" DESC, pl."id" DESC LIMIT 1) IN (SELECT id FROM inside) AS "belongsHere"
       FROM "StockTakeLine" l WHERE l."stockTakeId" = ? ORDER BY l."id"`,
    )
    .all(storeId, id);

const dishesAtBench = () =>
  connections()
    .rows.prepare<[], { id: string; trayId: string; position: number; setOn: string }>(
      `SELECT d."id", d."trayId", d."position", t."setOn" FROM "TrayDish" d JOIN "Tray" t ON t."id" = d."trayId"
       ORDER BY d."rowid"`,
    )
    .all();

/** What stands between a tray and its test: a day to settle, a slip to take back, the rest to class; then to close it. */
function nextStepOf(trayId: string, choose: Chooser): Attempt {
  const { rows } = connections();
  const dishes = rows
    .prepare<[string], BenchDish>(`SELECT "id", "position", "seeds" FROM "TrayDish" WHERE "trayId" = ?`)
    .all(trayId);
  const counts = rows
    .prepare<[string], Parameters<typeof writtenCount>[0]>(`SELECT * FROM "TrayCount" WHERE "trayId" = ? ORDER BY "id"`)
    .all(trayId)
    .map(writtenCount);
  const days = dayCounts(counts);
  const disagreed = choose.one(days.filter(({ disagree }) => disagree));
  if (disagreed) {
    const settle = `one ${disagreed.standing[0]?.id}`;
    const { dishId, on } = disagreed;
    return volunteer(settleCount, { trayId, dishId, on, version: seenCounts([disagreed]), settle });
  }
  const states = dishStates(dishes, counts);
  const over = states.find(({ remaining }) => remaining < 0)?.days.at(-1);
  const classed = states.every(({ remaining }) => remaining === 0);
  if (classed) return volunteer(closeTray, { trayId });
  const on = over?.on ?? today();
  const version = seenCounts(days.filter((day) => day.on === on));
  // Without a figure for any dish the counts of the day are taken back.
  return volunteer(writeTrayCounts, {
    trayId,
    on,
    version,
    restDead: over ? undefined : 'on',
    dishes: standingOf(over ? [] : days, on),
  });
}

/** What a form shows of a day that was counted already: sent again as it is. */
const standingOf = (days: ReturnType<typeof dayCounts>, on: string) =>
  Object.fromEntries(days.filter((day) => day.on === on && day.found).map(({ dishId, found }) => [dishId, found]));

/** Forty seeds at a time; the plan is made again from these. */
const IN_GROUPS = { size: 'groups', line: '0.85', mostSeeds: '400' };

/** Everything that hands do to packets and stores, by what they do. New commands are added here. */
export const ACTS: Record<string, Act> = {
  take: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    // Now and then more than there is: a refusal must leave nothing behind.
    const amount = choose.whole(1, Math.max(1, Math.ceil(packet.seeds * 0.4)) + (choose.whole(0, 9) === 9 ? 5000 : 0));
    const reason = choose.one(['sowing', 'sharing', 'discard', 'loss']);
    return volunteer(takeSeedOut, { packetId: packet.id, amount: String(amount), unit: 'seeds', reason });
  },
  move: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const from = daySince(choose, packet.lastFrom);
    const { storeId, container, moisturePercent, ...ticks } = placementFields(choose);
    const asItIs = choose.whole(0, 1) === 1;
    return volunteer(movePacket, {
      ...{ packetId: packet.id, storeId, from, ...ticks },
      ...(asItIs ? {} : { container, moisturePercent }),
    });
  },
  repack: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(repackPacket, {
      packetId: packet.id,
      from: daySince(choose, packet.lastFrom),
      ...packingFields(choose),
    });
  },
  split: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(splitPacket, {
      packetId: packet.id,
      amount: String(choose.whole(1, Math.max(1, packet.seeds))),
      unit: 'seeds',
      role: choose.one(['active', 'base', 'safety-duplicate']),
      from: daySince(choose, packet.lastFrom),
      ...placementFields(choose),
      ...packingFields(choose),
    });
  },
  merge: (choose) => {
    const packets = packetsNow();
    const kept = choose.one(packets);
    const other = choose.one(packets.filter(({ id, lotId }) => id !== kept?.id && lotId === kept?.lotId));
    if (!kept || !other) return null;
    const anyway = { keepAnyway: 'on', loseDuplicate: 'on' };
    return volunteer(mergePackets, { packetId: kept.id, otherPacketId: other.id, ...anyway });
  },
  undo: (choose) => {
    const movementId = choose.one(
      ids(`SELECT m."id" FROM "Movement" m WHERE m."reason" <> 'correction'
        AND NOT EXISTS (SELECT 1 FROM "Movement" c WHERE c."correctsId" = m."id") ORDER BY m."rowid" DESC LIMIT 8`),
    );
    return movementId ? volunteer(undoMovement, { movementId }) : null;
  },
  store: (choose) => {
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
  test: (choose) => {
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
  moisture: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(recordMoistureTest, {
      lot: packet.lotNumber,
      packetId: packet.id,
      testedOn: packet.lastFrom,
      method: 'meter',
      moisturePercent: String(choose.whole(5, 9)),
      takeSeed: 'on',
      amount: String(choose.whole(1, 40)),
      unit: 'seeds',
    });
  },
  purpose: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const role = choose.one(['active', 'base', 'safety-duplicate']);
    return volunteer(changePacketRole, { packetId: packet.id, role, loseDuplicate: 'on' });
  },
  care: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const what = choose.one(['sealed', 'opened', 'desiccant']);
    return volunteer(recordPacketCare, {
      packetId: packet.id,
      what,
      desiccant: what === 'desiccant' ? 'silica-gel' : '',
    });
  },
  'move a store': (choose) => {
    const stores = storesNow();
    const store = choose.one(stores.filter(({ kind }) => kind === 'box' || kind === 'shelf'));
    if (!store) return null;
    return volunteer(moveStore, {
      id: store.id,
      version: store.version,
      parentId: choose.one(['', ...stores.map(({ id }) => id)]),
      from: daySince(choose, '2024-01-01'),
      correction: choose.whole(0, 4) === 4 ? 'on' : undefined,
      moveAnyway: 'on',
    });
  },
  'set a store': (choose) => {
    const store = choose.one(storesNow());
    if (!store) return null;
    const inheritsTarget = store.parentId !== null && choose.whole(0, 1) === 1;
    return {
      command: updateStore,
      person: STEWARD,
      input: {
        ...{ id: store.id, version: store.version, name: store.name, kind: store.kind },
        inheritsTarget: inheritsTarget ? 'on' : undefined,
        targetTemperatureC: inheritsTarget ? '' : choose.one(['-18', '4', '12', '20']),
        targetHumidityPercent: inheritsTarget ? '' : choose.one(['', '30', '50']),
        setSince: daySince(choose, '2024-01-01'),
      },
    };
  },
  'log readings': (choose) => {
    const waiting = ids(`SELECT "id" FROM "ReadingImport" WHERE "status" = 'uploaded' ORDER BY "id" LIMIT 1`)[0];
    if (waiting !== undefined) return volunteer(importReadings, { importId: waiting, ...LOGGER_TEXT_LAYOUT });
    // Two days at four hours, often over what is there already.
    const from = addDays('2025-06-01', 2 * choose.whole(0, 20));
    const temperatures = Array.from({ length: 12 }, () => choose.whole(-20, 25));
    const bytes = new TextEncoder().encode(loggerText(`${from}T00:00Z`, temperatures, { everySeconds: 14_400 }));
    return volunteer(uploadReadings, { storeId: choose.one(storesNow())?.id, fileName: 'logger.csv', bytes });
  },
  'take readings back': (choose) => {
    const importId = choose.one(ids(`SELECT "id" FROM "ReadingImport" WHERE "status" = 'imported' ORDER BY "id"`));
    return importId === undefined ? null : { command: takeBackReadings, person: STEWARD, input: { importId } };
  },
  'take stock': (choose) => {
    const open = connections()
      .rows.prepare<[], { id: string; storeId: string }>(
        `SELECT "id", "storeId" FROM "StockTake" WHERE "status" = 'open'`,
      )
      .get();
    if (!open) return volunteer(startStockTake, { storeId: choose.one(storesNow())?.id });
    const lines = stockTakeLines(open);
    if (lines.length < 3 && choose.whole(0, 3) > 0) {
      const packet = choose.one(packetsNow());
      if (!packet) return null;
      const version = lines.find(({ packetId }) => packetId === packet.id)?.version ?? 0;
      const found = choose.one([
        { finding: 'not-here' },
        { finding: 'here', amount: String(packet.seeds), unit: 'seeds' },
        { finding: 'here', amount: String(choose.whole(0, packet.seeds + 20)), unit: 'seeds' },
        { finding: 'here' },
      ]);
      return volunteer(recordStockTakeLine, { stockTakeId: open.id, packetId: packet.id, version, ...found });
    }
    const decisions = Object.fromEntries(
      lines.map(({ id, version, ...line }) => [
        id,
        { version, decision: choose.one(choicesFor({ ...line, belongsHere: line.belongsHere === 1 })) },
      ]),
    );
    const input = { stockTakeId: open.id, decisions, closeUnfinished: 'on' };
    return { command: closeStockTake, person: STEWARD, input };
  },
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
  'reopen a tray': (choose) => {
    const trayId = choose.one(ids(`SELECT "id" FROM "Tray" WHERE "status" = 'closed' ORDER BY "rowid" DESC LIMIT 3`));
    return trayId === undefined ? null : volunteer(reopenTray, { trayId, reason: 'a dish was read wrong' });
  },
  'finish a tray': (choose) => {
    const trayId = choose.one(
      ids(`SELECT "id" FROM "Tray" t WHERE "status" = 'open'
        ORDER BY (SELECT COUNT(*) FROM "TrayCount" WHERE "trayId" = t."id") DESC, "rowid" DESC LIMIT 2`),
    );
    return trayId === undefined ? null : nextStepOf(trayId, choose);
  },
  'stain or cut': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const [trayId] = ids(`SELECT "id" FROM "Tray" WHERE "lotId" = '${packet.lotId}' ORDER BY "rowid" DESC LIMIT 1`);
    const seed =
      trayId !== undefined && choose.whole(0, 2) === 0 ? { trayId } : { packetId: packet.id, takeSeed: 'on' };
    const counts = choose.one([
      { kind: 'tetrazolium', stainedNormally: choose.whole(0, 9), unstained: '1' },
      { kind: 'cut', firm: choose.whole(0, 9), empty: '1' },
    ]);
    return volunteer(recordViabilityTest, { lot: packet.lotNumber, testedOn: today(), ...seed, ...counts });
  },
  share: (choose) => {
    const request = openRequest();
    if (!request) {
      return volunteer(createRequest, { recipient: 'Quay school', recipientKind: 'group', purpose: 'a bed of leeks' });
    }
    if (request.lines < 3 && choose.whole(0, 2) > 0) {
      const lot = choose.one(packetsNow())?.lotNumber;
      return volunteer(addRequestLine, { requestId: request.id, lot, seeds: String(choose.whole(1, 60)) });
    }
    const lines = ids(`SELECT "id" FROM "SharingLine" WHERE "requestId" = '${request.id}'`);
    const input = {
      requestId: request.id,
      version: request.version,
      measured: 'counted',
      overrule: Object.fromEntries(lines.map((id) => [id, 'they are our neighbours'])),
    };
    return { command: sendRequest, person: STEWARD, input };
  },
};

/** Names of acts to choose from: what takes several steps comes more often, so that its last step comes at all. */
export const ACT_NAMES = [
  ...Object.keys(ACTS),
  ...['take stock', 'take stock', 'take stock', 'share', 'share', 'log readings', 'merge', 'split'],
  ...['finish a tray', 'finish a tray', 'finish a tray', 'finish a tray', 'reopen a tray', 'reopen a tray'],
  ...['count at the bench', 'share', 'log readings', 'take readings back'],
  ...['set trays', 'set trays', 'give up a tray', 'set the next group', 'set the next group'],
];

/** Does it, as the person, through the command itself. */
export const perform = ({ command, person, input }: Attempt): Promise<unknown> => command(person, input);

/** One of these acts, chosen. */
export function chooseAttempt(choose: Chooser, names: readonly string[] = ACT_NAMES): Attempt | null {
  return ACTS[choose.one(names) ?? '']?.(choose) ?? null;
}
