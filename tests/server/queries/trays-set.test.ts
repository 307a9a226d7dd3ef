import { expect, test } from 'vitest';
import { findTraysSet } from '@/lib/server/queries/trays-set';
import { createLotWithPacket } from '../../support/create-tested-lot';
import { setTraysOf, trayRow } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank();

test('says what was set, in the order of the numbers; what does not exist is left out', async () => {
  const { packetId } = await createLotWithPacket();
  const row = trayRow({ seedFrom: `packet:${packetId}` });
  await setTraysOf([row], { place: 'window sill' });
  const groups = { dishes: '', seedsEach: '', size: 'groups', line: '0.85', mostSeeds: '400', anyway: 'on' };
  await setTraysOf([{ ...row, ...groups }]);
  const trays = await findTraysSet(['T-0002', 'T-0099', 'T-0001']);
  expect(trays).toMatchObject([
    { number: 'T-0001', lotNumber: 'L-2020-001', dishes: [50, 50], place: 'window sill', group: null },
    { number: 'T-0002', cropName: 'Leek', dishes: [20, 20], firstCountOn: '2026-11-24', group: 1 },
  ]);
});
