import { expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { connections } from '@/lib/server/database/connections';
import { getAccession } from '@/lib/server/queries/accessions';
import { getCrop } from '@/lib/server/queries/crops';
import { findHistory } from '@/lib/server/queries/history';
import { getLotForEdit } from '@/lib/server/queries/lots';
import {
  findPacketsIn,
  findPlacesFor,
  findStoreChoices,
  findStores,
  findStoresIn,
  getLastReadings,
  getStore,
} from '@/lib/server/queries/stores';
import { cropIdOf, makeAccession } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

it('shows an accession with its lots, newest harvest first, and its history', async () => {
  const accession = await makeAccession();
  await makeLot({ accession: accession.number, harvestedOn: '2024-09-01' });
  await makeLot({ accession: accession.number });
  const shown = await getAccession(accession.number);
  expect(shown?.lots.map((lot) => lot.number)).toEqual(['L-2026-001', 'L-2024-001']);
  const history = await findHistory([{ entity: 'accession', ids: [accession.id] }]);
  expect(history.map((line) => line.summary)).toEqual(['Took in accession A-0001, Skerry Winter (Leek)']);
  expect(await getAccession('A-9999')).toBeNull();
});

it('shows a crop with its facts and methods, each with mark and source, and its constants', async () => {
  const crop = await getCrop(cropIdOf('Leek'));
  expect(crop?.constantsBorrowed).toBe(true);
  expect(crop?.longevityConstants?.species).toContain('Allium');
  expect(crop?.facts.every((fact) => fact.mark !== '' && fact.source !== '')).toBe(true);
  expect(crop?.germinationMethods[0]).toMatchObject({ firstCountDays: 6, finalCountDays: 14 });
  expect(await getCrop('no-such-crop')).toBeNull();
});

it('gives a lot to an edit form with its version, and null where there is none', async () => {
  const { number } = await makeLot();
  expect((await getLotForEdit(number))?.version).toBe(1);
  expect(await getLotForEdit('x')).toBeNull();
});

it('lists stores by their nesting and counts the packets that hold seed where they lie now', async () => {
  const freezer = await makeStore({ name: 'Freezer A', kind: 'freezer', targetTemperatureC: '-18' });
  const shelf = await makeStore({ name: 'Shelf', kind: 'shelf', parentId: freezer.id });
  const cellar = await makeStore({ name: 'Cellar' });
  const moved = await makeLot({ storeId: cellar.id });
  await movePacket(VOLUNTEER, { packetId: moved.packetId, storeId: shelf.id, container: 'foil-pouch' });
  const used = await makeLot({ storeId: cellar.id });
  await takeSeedOut(VOLUNTEER, { packetId: used.packetId, amount: '1000', unit: 'seeds', reason: 'sowing' });
  const stores = await findStores();
  expect(stores.map(({ name, depth, packets }) => [name, depth, packets])).toEqual([
    ['Cellar', 0, 0],
    ['Freezer A', 0, 1],
    ['Shelf', 1, 1],
  ]);
  expect((await findStoresIn(freezer.id)).map(({ name, depth }) => [name, depth])).toEqual([['Shelf', 0]]);
  const detail = await getStore(freezer.id);
  expect(detail?.packetsInside).toBe(1);
  const here = await findPacketsIn(freezer.id, 1, 1);
  expect(here).toMatchObject({ total: 1, pages: 1 });
  expect(here.rows[0]).toMatchObject({
    storeName: 'Shelf',
    lotNumber: moved.number,
    seeds: 1000,
    container: 'foil-pouch',
    moisturePercent: null,
  });
  expect((await findStoreChoices()).map((store) => store.name)).toEqual(['Cellar', 'Freezer A', 'Freezer A › Shelf']);
  expect((await findPlacesFor(freezer.id)).map((store) => store.name)).toEqual(['Cellar']);
  expect((await getStore(shelf.id))?.around.map(({ name }) => name)).toEqual(['Freezer A']);
  expect(await getStore('no-such-store')).toBeNull();
});

it("says the coldest and warmest of a store's last week of readings", async () => {
  const { id } = await makeStore();
  expect(await getLastReadings(id)).toBeNull();
  const add = connections().bulk.prepare(
    `INSERT INTO "Reading" ("storeId", "atEpochSeconds", "temperatureC") VALUES (?, ?, ?)`,
  );
  const day = 86_400;
  for (const [at, temperature] of [
    [0, 40],
    [13 * day, 40],
    [13 * day + 1, 3.5],
    [18 * day, 5.25],
    [20 * day, 4],
  ] as const) {
    add.run(id, at, temperature);
  }
  expect(await getLastReadings(id)).toEqual({ lastAtEpochSeconds: 20 * day, coldestC: 3.5, warmestC: 5.25 });
});
