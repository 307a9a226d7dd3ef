/** Prepared statements that write a large collection's rows; ids and numbers count up, so that it is always the same. */
import type Database from 'better-sqlite3';
import type { LargeStoreStory } from '../scenarios/large-stores';
import type { ReplicateCounts } from './test-outcome';

export interface LargeStore {
  id: string;
  story: LargeStoreStory;
}

export interface LotRow {
  accessionId: string;
  harvestedOn: string;
  harvestYear: number;
  generation: number;
  isolation: string;
  seeds: number;
  storeId: string;
  storedOn: string;
  container: string;
  moisturePercent: number | null;
}

const BY = 'benchmark';

/** @param bulk  open database; call inside the write queue, in one transaction */
export function largeCollectionWriter(bulk: Database.Database) {
  const insert = (table: string, ...columns: string[]) =>
    bulk.prepare(
      `INSERT INTO "${table}" (${columns.map((column) => `"${column}"`).join(', ')}) VALUES (${columns.map(() => '?').join(', ')})`,
    );
  const addStore = insert('Store', 'id', 'name', 'kind', 'targetTemperatureC', 'targetRelativeHumidity');
  const addAccession = insert('Accession', 'id', 'number', 'name', 'cropId', 'donor');
  const addLot = insert('Lot', 'id', 'number', 'accessionId', 'harvestedOn', 'generation', 'isolation');
  const addPacket = insert('Packet', 'id', 'number', 'lotId');
  const addPlacement = insert('Placement', 'id', 'packetId', 'storeId', 'from', 'container', 'moisturePercent');
  const addMovement = insert('Movement', 'id', 'packetId', 'on', 'reason', 'seeds', 'byId');
  const addTest = insert('GerminationTest', 'id', 'number', 'lotId', 'packetId', 'setOn', 'finishedOn', 'byId');
  const addReplicate = insert(
    'Replicate',
    'testId',
    'position',
    'seeds',
    'normal',
    'abnormal',
    'hard',
    'fresh',
    'dead',
  );

  const last = new Map<string, number>();
  const count = (series: string) => {
    const next = (last.get(series) ?? 0) + 1;
    last.set(series, next);
    return next;
  };
  const nextNumber = (series: string, digits: number) => `${series}-${String(count(series)).padStart(digits, '0')}`;
  // As long as the ids of the product, so that indexes weigh the same.
  const nextId = (kind: number) =>
    `0000000${kind}-0000-7000-8000-${count(`id ${kind}`).toString(16).padStart(12, '0')}`;

  return {
    store(story: LargeStoreStory): LargeStore {
      const id = nextId(1);
      const humidity = story.targetHumidityPercent === undefined ? null : story.targetHumidityPercent / 100;
      addStore.run(id, story.name, story.kind, story.targetTemperatureC, humidity);
      return { id, story };
    },
    accession(cropId: string, name: string): string {
      const id = nextId(2);
      addAccession.run(id, nextNumber('A', 4), name, cropId, 'a grower');
      return id;
    },
    lot(row: LotRow): { lotId: string; packetId: string; seeds: number } {
      const lotId = nextId(3);
      const packetId = nextId(4);
      const number = nextNumber(`L-${row.harvestYear}`, 3);
      addLot.run(lotId, number, row.accessionId, row.harvestedOn, row.generation, row.isolation);
      addPacket.run(packetId, nextNumber('P', 5), lotId);
      addPlacement.run(nextId(5), packetId, row.storeId, row.storedOn, row.container, row.moisturePercent);
      addMovement.run(nextId(6), packetId, row.storedOn, 'deposit', row.seeds, BY);
      return { lotId, packetId, seeds: row.seeds };
    },
    test(
      lot: { lotId: string; packetId: string; seeds: number },
      { setOn, finishedOn, replicates }: { setOn: string; finishedOn: string; replicates: ReplicateCounts[] },
    ): void {
      const id = nextId(7);
      addTest.run(id, nextNumber('T', 4), lot.lotId, lot.packetId, setOn, finishedOn, BY);
      replicates.forEach(({ seeds, normal, abnormal, hard, fresh, dead }, index) => {
        addReplicate.run(id, index + 1, seeds, normal, abnormal, hard, fresh, dead);
      });
      const taken = replicates.reduce((sum, { seeds }) => sum + seeds, 0);
      addMovement.run(nextId(6), lot.packetId, setOn, 'test', -taken, BY);
    },
    /** So that the next accession made by hand gets the next number. */
    numberSeries(): void {
      const put = bulk.prepare(`INSERT INTO "NumberSeries" ("series", "last") VALUES (?, ?)`);
      for (const [series, number] of last) if (!series.startsWith('id ')) put.run(series, number);
    },
  };
}
