import { expect, it } from 'vitest';
import { delimiterName, importReadingsSchema, layoutFromAddress } from '@/lib/schemas/reading-import';

const LAYOUT = {
  importId: '7',
  delimiter: 'tab',
  firstLine: '3',
  dateColumn: '0',
  timeColumn: '',
  temperatureColumn: '1',
  humidityColumn: '2',
  dateOrder: 'day-month-year',
  temperatureUnit: 'F',
  zone: 'Europe/Lisbon',
};

it('an address says of a layout what it says rightly; the rest is left to the guess', () => {
  expect(layoutFromAddress({})).toEqual({});
  expect(
    layoutFromAddress({ zone: 'UTC+01:00', dateOrder: 'sideways', humidityColumn: '', delimiter: 'spaces' }),
  ).toEqual({
    zone: 'UTC+01:00',
    humidityColumn: null,
    delimiter: ' ',
  });
  expect(layoutFromAddress({ zone: ['a', 'b'], firstLine: '0', dateColumn: '-1', page: '2' })).toEqual({});
});

it('a form gives a layout; a blank column is none', () => {
  expect(importReadingsSchema.parse(LAYOUT)).toEqual({
    importId: 7,
    delimiter: '\t',
    firstLine: 3,
    dateColumn: 0,
    timeColumn: null,
    temperatureColumn: 1,
    humidityColumn: 2,
    dateOrder: 'day-month-year',
    temperatureUnit: 'F',
    zone: 'Europe/Lisbon',
  });
});

it('says beside the field what is missing', () => {
  const parsed = importReadingsSchema.safeParse({ ...LAYOUT, zone: 'Nowhere/Land', dateColumn: '' });
  expect(parsed.error?.issues.map(({ path, message }) => [path[0], message])).toEqual([
    ['dateColumn', 'Choose the column of the date.'],
    ['zone', 'This is no time zone: choose one from the list.'],
  ]);
});

it('every delimiter has a name', () => {
  expect([',', ';', '\t', '|', ' '].map((mark) => delimiterName(mark as ','))).toEqual([
    'comma',
    'semicolon',
    'tab',
    'bar',
    'spaces',
  ]);
});
