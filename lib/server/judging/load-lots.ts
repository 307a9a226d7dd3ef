import type Database from 'better-sqlite3';
import { stayMoistures } from '@/lib/domain/moisture/stay-moisture';
import type { Placement } from '@/lib/domain/stock/storage-history';
import { packetMoistureTests } from '../moisture/packet-moisture-tests';

/** Lots with all that their judgement rests on, read in six queries however many lots there are. */
export interface LotRecord {
  id: string;
  number: string;
  accessionId: string;
  accessionNumber: string;
  accessionName: string;
  accessionAcquiredOn: string | null;
  cropId: string;
  harvestedOn: string;
  generation: number;
  isolation: string;
  packets: PacketRecord[];
  tests: TestRecord[];
}

export interface PacketRecord {
  id: string;
  lotId: string;
  role: string;
  seeds: number;
  /** with the moisture of sealed stays that only tests of the packet tell */
  placements: Placement[];
}

export interface TestRecord {
  id: string;
  number: string;
  lotId: string;
  packetId: string | null;
  setOn: string;
  finishedOn: string;
  replicates: { seeds: number; normal: number; abnormal: number; hard: number; fresh: number; dead: number }[];
}

type Row<Type> = Type & Record<string, unknown>;

/**
 * @param lotIds  which lots; 'all' for the whole collection
 * @returns lots in no particular order, tests without those that a later entry corrects, oldest first
 */
export function loadLots(bulk: Database.Database, lotIds: readonly string[] | 'all'): LotRecord[] {
  const chosen = lotIds === 'all' ? '' : `IN (SELECT "value" FROM json_each(@ids))`;
  const where = (column: string) => (lotIds === 'all' ? '' : `WHERE ${column} ${chosen}`);
  const parameters = lotIds === 'all' ? {} : { ids: JSON.stringify(lotIds) };

  const lots = bulk
    .prepare<object, Row<Omit<LotRecord, 'packets' | 'tests'>>>(
      `SELECT l."id", l."number", l."accessionId", a."number" AS "accessionNumber", a."name" AS "accessionName",
         a."acquiredOn" AS "accessionAcquiredOn", a."cropId", l."harvestedOn", l."generation", l."isolation"
       FROM "Lot" l JOIN "Accession" a ON a."id" = l."accessionId" ${where('l."id"')}`,
    )
    .all(parameters)
    .map((row): LotRecord => ({ ...row, packets: [], tests: [] }));
  const byLot = new Map(lots.map((lot) => [lot.id, lot]));
  const byPacket = new Map<string, PacketRecord>();

  for (const row of bulk
    .prepare<object, Row<Omit<PacketRecord, 'placements'>>>(
      `SELECT p."id", p."lotId", p."role",
         (SELECT COALESCE(SUM(m."seeds"), 0) FROM "Movement" m WHERE m."packetId" = p."id") AS "seeds"
       FROM "Packet" p ${where('p."lotId"')}`,
    )
    .iterate(parameters)) {
    const packet: PacketRecord = { ...row, placements: [] };
    byPacket.set(packet.id, packet);
    byLot.get(packet.lotId)?.packets.push(packet);
  }
  for (const row of bulk
    .prepare<object, Row<Placement & { packetId: string }>>(
      `SELECT pl."packetId", pl."storeId", pl."from", pl."container", pl."moisturePercent"
       FROM "Placement" pl JOIN "Packet" p ON p."id" = pl."packetId" ${where('p."lotId"')}
       ORDER BY pl."packetId", pl."from", pl."id"`,
    )
    .iterate(parameters)) {
    byPacket.get(row.packetId)?.placements.push(row);
  }
  for (const [packetId, tests] of packetMoistureTests(bulk, chosen, parameters)) {
    const packet = byPacket.get(packetId);
    if (packet) packet.placements = stayMoistures(packet.placements, tests);
  }
  loadTests(bulk, where('t."lotId"'), parameters, byLot);
  return lots;
}

function loadTests(bulk: Database.Database, where: string, parameters: object, byLot: Map<string, LotRecord>): void {
  const byTest = new Map<string, TestRecord>();
  for (const row of bulk
    .prepare<object, Row<Omit<TestRecord, 'replicates'>>>(
      `SELECT t."id", t."number", t."lotId", t."packetId", t."setOn", t."finishedOn" FROM "GerminationTest" t
       ${where} ${where ? 'AND' : 'WHERE'} NOT EXISTS (SELECT 1 FROM "GerminationTest" c WHERE c."correctsId" = t."id")
       ORDER BY t."finishedOn", t."id"`,
    )
    .iterate(parameters)) {
    const test: TestRecord = { ...row, replicates: [] };
    byTest.set(test.id, test);
    byLot.get(test.lotId)?.tests.push(test);
  }
  for (const row of bulk
    .prepare<object, Row<TestRecord['replicates'][number] & { testId: string }>>(
      `SELECT r.* FROM "Replicate" r JOIN "GerminationTest" t ON t."id" = r."testId" ${where}
       ORDER BY r."testId", r."position"`,
    )
    .iterate(parameters)) {
    byTest.get(row.testId)?.replicates.push(row);
  }
}
