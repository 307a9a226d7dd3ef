import { splitPacket } from '@/lib/server/commands/split-packet';
import { closeConnections, connections } from '@/lib/server/database/connections';
import { makeAccession } from '../create-accession';
import { makeLot } from '../create-lot';
import { makeStore } from '../create-store';
import { insertTray } from '../insert-tray';
import { VOLUNTEER } from '../people';
import { installRecorder } from './recorder';

/** Two phones wrote different things of one dish and day without seeing each other's. */
const TWO_PHONES = [
  { on: '2026-11-23', dish: 1, found: { normal: 30 } },
  { on: '2026-11-23', dish: 1, found: { normal: 31 } },
];

/**
 * A small bank with a recorder in it: three stores and a box, four accessions, eight lots of 3000 seeds, every other one in
 * two packets, two trays at the bench.
 */
export async function fillBusyBank(): Promise<void> {
  installRecorder(connections().bulk);
  const stores = [
    await makeStore({ kind: 'freezer', targetTemperatureC: '-18' }),
    await makeStore(),
    await makeStore({ kind: 'room', targetTemperatureC: '17', targetHumidityPercent: '50' }),
  ];
  const box = await makeStore({
    name: 'Box 1',
    kind: 'box',
    parentId: stores[1]?.id,
    inheritsTarget: 'on',
    targetTemperatureC: '',
  });
  for (const name of ['Skerry Winter', 'Holm Grey', 'Voe Early', 'Strand Long']) {
    const accession = await makeAccession({ name });
    for (const store of stores.slice(0, 2)) {
      const { packetId } = await makeLot({
        accession: accession.number,
        storeId: store.id,
        harvestedOn: '2019-09-10',
        storedOn: '2019-10-05',
        seedCount: '3000',
      });
      if (store === stores[0]) {
        const part = { amount: '800', unit: 'seeds', role: 'active', container: 'glass-jar', sealed: 'on' };
        await splitPacket(VOLUNTEER, { packetId, storeId: box.id, from: '2020-01-10', moisturePercent: '7', ...part });
      }
    }
  }
  // Two trays at the bench, of seed that was set before this bank kept a ledger of them.
  for (const lotNumber of lotNumbers())
    insertTray(connections().bulk, { lotNumber, takesSeed: false, counts: TWO_PHONES });
  // No command set them: the next one must not be taken for it.
  connections().bulk.exec(`DELETE FROM "Recorder" WHERE "table" IN ('Tray', 'TrayCount')`);
  // Everything into the one file, so that it can be copied.
  connections().bulk.pragma('wal_checkpoint(TRUNCATE)');
  await closeConnections();
}

const lotNumbers = (): string[] =>
  connections().bulk.prepare<[], string>(`SELECT "number" FROM "Lot" ORDER BY "rowid" LIMIT 2`).pluck().all();
