import { expect, test } from 'vitest';
import { getLotToTest } from '@/lib/server/queries/lot-to-test';
import { createLotWithPacket } from '../../support/create-tested-lot';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

test('a lot about to be tested is known with its seeds; a number that no lot has is nothing', async () => {
  const created = await createLotWithPacket();
  const lot = await getLotToTest(created.number);
  expect(lot).toMatchObject({ number: created.number, cropName: 'Leek' });
  expect(lot?.seedsLeft).toBeGreaterThan(0);
  expect(await getLotToTest('L-0000-000')).toBeNull();
});
