import { expect, test } from 'vitest';
import { trayMethodInWords } from '@/lib/domain/germination/bench/tray-method';

const PLAIN = { substrate: null, temperatures: null, light: false, preTreatment: null, prechillDays: 0 };

test('a method is one line of what was noted, in the order in which it is done', () => {
  const all = {
    substrate: 'top of blotters',
    temperatures: '20-30',
    light: true,
    preTreatment: 'scratched',
    prechillDays: 7,
  };
  expect(trayMethodInWords(all)).toBe('top of blotters, 20–30 °C, light, first 7 days moist and cold, scratched');
  expect(trayMethodInWords({ ...PLAIN, prechillDays: 1 })).toBe('first 1 day moist and cold');
});

test('temperatures in the bank’s own words stay as they are', () => {
  expect(trayMethodInWords({ ...PLAIN, temperatures: 'window sill' })).toBe('window sill');
  expect(trayMethodInWords({ ...PLAIN, temperatures: '20; 25' })).toBe('20 °C or 25 °C');
});

test('nothing noted is nothing', () => {
  expect(trayMethodInWords(PLAIN)).toBeNull();
});
