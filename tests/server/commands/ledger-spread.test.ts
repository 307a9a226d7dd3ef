import { expect, test } from 'vitest';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { makeLot } from '@/tests/support/create-lot';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { ledgerOf } from '@/tests/support/ledger';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const take = (packetId: string, amount: string, unit: 'seeds' | 'grams') =>
  takeSeedOut(VOLUNTEER, { packetId, amount, unit, reason: 'sowing' });

test('counted seed goes into and out of the ledger without a spread, also by a test', async () => {
  const { packetId } = await createLotWithPacket({ seeds: 1000 });
  await take(packetId, '100', 'seeds');
  await recordTest({ packetId, takeSeed: 'on' });
  expect(ledgerOf(packetId).map(({ seedsSd }) => seedsSd)).toEqual([0, 0, 0]);
});

test("what was weighed by the lot's own thousand-seed weight is some 3 % off", async () => {
  const { packetId } = await makeLot({ seedCount: '', cleanWeightG: '10.4', thousandSeedWeightG: '2.6' });
  await take(packetId, '1,3', 'grams');
  const [deposit, out] = ledgerOf(packetId);
  // 4000 seeds: 120^2 + 0.09 * 4000 + (0.1 g / 2.6 mg)^2 / 12
  expect(deposit?.seedsSd).toBeCloseTo(Math.sqrt(14_400 + 360 + (100 / 2.6) ** 2 / 12), 9);
  expect(out).toMatchObject({ seeds: -500, grams: -1.3 });
  expect(out?.seedsSd).toBeCloseTo(Math.sqrt(225 + 45 + (100 / 2.6) ** 2 / 12), 9);
});

test("what was weighed by the crop's usual seed is a quarter off, and so is what comes out by it", async () => {
  const { packetId } = await makeLot({ seedCount: '', cleanWeightG: '10' });
  await take(packetId, '2', 'grams');
  const [deposit, out] = ledgerOf(packetId);
  expect((deposit?.seedsSd ?? 0) / (deposit?.seeds ?? 1)).toBeCloseTo(0.25, 1);
  expect((out?.seedsSd ?? 0) / (out?.seeds ?? 1)).toBeCloseTo(-0.25, 0);
});

test('a counter-entry carries the spread of what it takes back', async () => {
  const { packetId } = await makeLot({ seedCount: '', cleanWeightG: '10.4', thousandSeedWeightG: '2.6' });
  await take(packetId, '1,3', 'grams');
  const [, out] = ledgerOf(packetId);
  await undoMovement(VOLUNTEER, { movementId: out?.id });
  expect(ledgerOf(packetId).at(-1)).toMatchObject({ seeds: 500, grams: 1.3, seedsSd: out?.seedsSd });
});
