import { expect, test } from 'vitest';
import { countDaysInWords, methodsOffered, temperaturesInWords } from '@/app/(bank)/germination/_parts/method-words';

test('alternating temperatures are said with their hours (7 CFR 201.58(a)(8): 16 and 8)', () => {
  expect(temperaturesInWords('20')).toBe('20 °C');
  expect(temperaturesInWords('20-30; 25')).toBe('20 °C for 16 hours and 30 °C for 8 a day, or 25 °C');
  expect(temperaturesInWords('warm window sill')).toBe('warm window sill');
});

test('each substrate is offered with each temperature', () => {
  const method = { id: '', light: false, preTreatment: null, hardSeedOccurs: false, mark: '', source: '' };
  const days = { firstCountDays: 5, finalCountDays: 8 };
  expect(methodsOffered([{ ...method, ...days, substrata: 'sand or soil', temperatures: '20-30; 25' }])).toEqual([
    'sand or soil, 20–30 °C',
    'sand or soil, 25 °C',
  ]);
});

test('the days of counting, with one count or two', () => {
  expect(countDaysInWords({ firstCountDays: 6, finalCountDays: 14 })).toBe('first after 6 days, last after 14');
  expect(countDaysInWords({ firstCountDays: null, finalCountDays: 8 })).toBe('once, after 8 days');
  expect(countDaysInWords({ firstCountDays: null, finalCountDays: null })).toBeNull();
});
