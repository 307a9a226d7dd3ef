import { beforeAll, expect, it } from 'vitest';
import { findLabelledDishes } from '@/lib/server/queries/tray-labels';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

beforeAll(async () => {
  await createLotWithPacket({ number: 'L-2020-001', treatment: 'thiram' });
  await createLotWithPacket({ number: 'L-2020-002', crop: 'Kale', accessionName: 'Westness Black' });
  await createTray({ lotNumber: 'L-2020-001', number: 'T-0301', dishes: [50, 25], temperatures: '20-30' });
  await createTray({ lotNumber: 'L-2020-002', number: 'T-0302', dishes: [100], place: 'incubator 1' });
});

it('is one label a dish, trays in the order asked, each once', () => {
  expect(findLabelledDishes(['T-0302', 'T-0301']).map((dish) => [dish.trayNumber, dish.dish, dish.dishes])).toEqual([
    ['T-0302', 1, 1],
    ['T-0301', 1, 2],
    ['T-0301', 2, 2],
  ]);
});

it('says what lies in the dish and how it is treated', () => {
  expect(findLabelledDishes(['T-0301'])[1]).toEqual({
    trayNumber: 'T-0301',
    dish: 2,
    dishes: 2,
    seeds: 25,
    lotNumber: 'L-2020-001',
    accessionName: 'Skerry Winter',
    cropName: 'Leek',
    setOn: '2026-11-18',
    firstCountOn: '2026-11-23',
    finalCountOn: '2026-12-02',
    temperatures: '20-30',
    place: null,
    treatment: 'thiram',
  });
});

it('leaves out what is not there', () => {
  expect(findLabelledDishes(['T-9999'])).toEqual([]);
  expect(findLabelledDishes([])).toEqual([]);
});
