import { expect, it } from 'vitest';
import { movePacket } from '@/lib/server/commands/move-packet';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { getPacketPage } from '@/lib/server/queries/packet-page';
import { findStock } from '@/lib/server/queries/stock';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

async function boxInFreezer() {
  const freezer = await makeStore({ name: 'Freezer A', kind: 'freezer', targetTemperatureC: '-18' });
  const shelf = await makeStore({ name: 'Shelf 2', kind: 'shelf', targetTemperatureC: '-18', parentId: freezer.id });
  return makeStore({ name: 'Box 7', kind: 'box', targetTemperatureC: '-18', parentId: shelf.id });
}

it('says of each packet what it is for, how much is in it, where it lies now, step by step, and what it wants', async () => {
  const box = await boxInFreezer();
  const lot = await makeLot();
  const made = await splitPacket(VOLUNTEER, {
    packetId: lot.packetId,
    amount: '300',
    unit: 'seeds',
    role: 'base',
    storeId: box.id,
    container: 'foil-pouch',
    moisturePercent: '6',
    sealed: 'on',
    desiccant: 'silica-gel',
    from: '2026-11-01',
  });
  const [old, fresh] = await findStock({ lotIds: [lot.lotId] });
  expect(old).toMatchObject({ number: 'P-00001', role: 'active', seeds: 700, careDue: null });
  expect(fresh).toMatchObject({
    number: made.number,
    lotNumber: lot.number,
    role: 'base',
    seeds: 300,
    container: 'foil-pouch',
    moisturePercent: 6,
    since: '2026-11-01',
    care: { sealedSince: '2026-11-01', desiccant: { key: 'silica-gel' } },
    careDue: { what: 'desiccant', on: '2027-04-30' },
  });
  expect(fresh?.place?.steps.map(({ name }) => name)).toEqual(['Freezer A', 'Shelf 2', 'Box 7']);
  expect(fresh?.place).toMatchObject({ targetTemperatureC: -18, atPartnerBank: false });
  expect(await findStock({ number: made.number })).toEqual([fresh]);
  expect(await findStock({ lotIds: ['no-such-lot'] })).toEqual([]);
});

it('knows that a shelf of a partner bank is at the partner bank', async () => {
  const partner = await makeStore({ name: 'Across the sound', kind: 'partner-bank' });
  const shelf = await makeStore({ name: 'Their shelf', kind: 'shelf', parentId: partner.id });
  const { packetId, lotId } = await makeLot();
  await movePacket(VOLUNTEER, { packetId, storeId: shelf.id });
  const [packet] = await findStock({ lotIds: [lotId] });
  expect(packet).toMatchObject({ role: 'safety-duplicate', place: { atPartnerBank: true } });
});

it("gives a packet's page its stays and what was done to it, the latest first, and its ledger from the beginning", async () => {
  const box = await boxInFreezer();
  const { packetId, packetNumber } = await makeLot();
  await movePacket(VOLUNTEER, { packetId, storeId: box.id, from: '2026-11-01' });
  await recordPacketCare(VOLUNTEER, { packetId, what: 'sealed', on: '2026-11-02' });
  await recordPacketCare(VOLUNTEER, { packetId, what: 'opened', on: '2026-11-20' });
  const page = await getPacketPage(packetNumber);
  expect(page?.stays).toMatchObject([
    { from: '2026-11-01', to: null, path: { steps: [{ name: 'Freezer A' }, { name: 'Shelf 2' }, { name: 'Box 7' }] } },
    { from: '2026-10-05', to: '2026-11-01', container: 'glass-jar', moisturePercent: 7.5 },
  ]);
  expect(page?.careDone.map(({ what }) => what)).toEqual(['opened', 'sealed']);
  expect(page?.careDue).toEqual({ what: 'seal', on: '2026-11-20' });
  expect(page?.held).toMatchObject({ seeds: 1000, sd: 0 });
  expect(page?.ledger).toMatchObject([{ reason: 'deposit', balance: 1000 }]);
  expect(await getPacketPage('P-99999')).toBeNull();
});
