import { expect, test } from 'vitest';
import { toEpochDay } from '../../../lib/domain/calendar/calendar-date';
import { moistureHistory } from '../../../lib/domain/moisture/moisture-history';
import type { Placement } from '../../../lib/domain/stock/storage-history';

const stay = (from: string, overrides: Partial<Placement> = {}): Placement => ({
  storeId: 'fridge',
  from,
  container: 'glass-jar',
  moisturePercent: 5.2,
  ...overrides,
});
const found = { number: 'M-0001', testedOn: '2024-03-01', moisturePercent: 0.4, standardPoints: 1 };

test('sealed stays of known moisture are drawn from day to day, the last up to today', () => {
  const measured = { moisturePercent: 6, tests: [] };
  const history = moistureHistory(
    [
      {
        number: 'P-00001',
        placements: [
          stay('2020-01-01'),
          stay('2021-01-01', { container: 'open-tray' }),
          stay('2021-02-01', { moisturePercent: null }),
          stay('2022-01-01', { moisturePercent: 6, measured }),
        ],
      },
    ],
    [],
    '2026-11-25',
  );
  expect(history?.stretches).toEqual([
    {
      packet: 'P-00001',
      fromDay: toEpochDay('2020-01-01'),
      toDay: toEpochDay('2021-01-01'),
      moisturePercent: 5.2,
      source: 'written',
    },
    {
      packet: 'P-00001',
      fromDay: toEpochDay('2022-01-01'),
      toDay: toEpochDay('2026-11-25'),
      moisturePercent: 6,
      source: 'measured',
    },
  ]);
});

test('dots carry the give or take of their method, never below no water at all', () => {
  const [dot] = moistureHistory([], [found], '2026-11-25')?.dots ?? [];
  expect(dot).toEqual({
    number: 'M-0001',
    day: toEpochDay('2024-03-01'),
    moisturePercent: 0.4,
    lowerPercent: 0,
    upperPercent: 1.4,
  });
});

test('a stay planned for a later day is not drawn, and a lot of which nothing is known has no picture', () => {
  const planned = [{ number: 'P-00001', placements: [stay('2026-12-01')] }];
  expect(moistureHistory(planned, [], '2026-11-25')).toBeNull();
  expect(moistureHistory(planned, [found], '2026-11-25')).toMatchObject({
    fromDay: toEpochDay('2024-03-01'),
    toDay: toEpochDay('2026-11-25'),
    stretches: [],
  });
});
