import { expect, test } from 'vitest';
import { permittedDifference, sealDoubt } from '../../../lib/domain/moisture/seal-doubt';
import type { PacketMoistureTest } from '../../../lib/domain/moisture/stay-moisture';
import type { Placement } from '../../../lib/domain/stock/storage-history';
import { expectClose, goldenRows } from '../../support/golden-table';

const packedAt = (moisturePercent: number | null, container = 'glass-jar'): Placement[] => [
  { storeId: 'fridge', from: '2020-01-01', container, moisturePercent },
];
const found = (testedOn: string, moisturePercent: number, standardPoints = 0.2): PacketMoistureTest => ({
  number: `M-${testedOn}`,
  testedOn,
  moisturePercent,
  standardPoints,
});

test('two moistures may be apart by twice the standard deviation of their difference', () => {
  for (const row of goldenRows<{ firstPoints: number; secondPoints: number; permitted: number }>(
    'moisture-of-stays',
    'apart',
  )) {
    expectClose(permittedDifference(row.firstPoints, row.secondPoints), row.permitted, 1e-14, row);
  }
  expect(() => permittedDifference(0, 1)).toThrow(RangeError);
});

test('a jar packed at 5.2 % and measured at 7.9 % may leak', () => {
  const doubt = sealDoubt(packedAt(5.2), [found('2024-03-01', 7.9)]);
  expect(doubt).toMatchObject({
    stayFrom: '2020-01-01',
    before: { kind: 'written' },
    beforePercent: 5.2,
    test: { moisturePercent: 7.9 },
  });
  expect(doubt?.differencePoints).toBeCloseTo(2.7, 10);
});

test('an oven is allowed 0.56 points about the written moisture, the air over the seed 2.03', () => {
  expect(sealDoubt(packedAt(5.2), [found('2024-03-01', 5.76)])).toBeNull();
  expect(sealDoubt(packedAt(5.2), [found('2024-03-01', 5.77)])).not.toBeNull();
  expect(sealDoubt(packedAt(5.2), [found('2024-03-01', 7.2, 1)])).toBeNull();
  expect(sealDoubt(packedAt(5.2), [found('2024-03-01', 7.3, 1)])).not.toBeNull();
  // drier than written is as odd as moister
  expect(sealDoubt(packedAt(5.2), [found('2024-03-01', 4.6)])?.differencePoints).toBeLessThan(0);
});

test('the latest test speaks: where it agrees again there is no doubt', () => {
  expect(sealDoubt(packedAt(5.2), [found('2025-03-01', 5.3), found('2024-03-01', 7.9)])).toBeNull();
});

test('where nothing was written the latest test is held against the mean of the earlier ones', () => {
  expect(sealDoubt(packedAt(null), [found('2024-03-01', 6)])).toBeNull();
  expect(sealDoubt(packedAt(null), [found('2024-03-01', 6), found('2025-03-01', 6.4)])).toBeNull();
  expect(
    sealDoubt(packedAt(null), [found('2023-03-01', 6), found('2024-03-01', 6.2), found('2025-03-01', 8)]),
  ).toMatchObject({ before: { kind: 'tested', testedOn: '2024-03-01' }, beforePercent: 6.1 });
});

test('seed that is measured moist, dried and sealed on one day leaves no doubt; from the next day on it does', () => {
  expect(sealDoubt(packedAt(5.2), [found('2020-01-01', 12)])).toBeNull();
  expect(sealDoubt(packedAt(5.2), [found('2020-01-02', 12)])).not.toBeNull();
});

test('an open packet, a test from before the stay, and no packet at all leave no doubt', () => {
  expect(sealDoubt(packedAt(5.2, 'paper-envelope'), [found('2024-03-01', 9)])).toBeNull();
  expect(sealDoubt(packedAt(5.2), [found('2019-12-31', 9)])).toBeNull();
  expect(sealDoubt([], [found('2024-03-01', 9)])).toBeNull();
});
