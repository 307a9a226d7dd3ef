import { describe, expect, it } from 'vitest';
import type { LoggerDateOrder } from '@/lib/domain/logger/logger-layout';
import { type WallTime, wallTimeReader } from '@/lib/domain/logger/wall-time';

function read(text: string, order: LoggerDateOrder = 'day-month-year'): string | null {
  const wall: WallTime = { seconds: 0, offsetSeconds: null };
  if (!wallTimeReader(order).read(text, 0, text.length, -1, -1, wall)) return null;
  const clock = new Date(wall.seconds * 1000).toISOString().slice(0, 19);
  return wall.offsetSeconds === null ? clock : `${clock} ${wall.offsetSeconds / 3600}`;
}

describe('a time as loggers write it', () => {
  it.each([
    ['05/03/2024 13:05', '2024-03-05T13:05:00'],
    ['5.3.24 9:05:07', '2024-03-05T09:05:07'],
    ['05-03-2024, 13:05:07.250', '2024-03-05T13:05:07'],
    ['2024-03-05T13:05:07,250', '2024-03-05T13:05:07'],
    ['2024/3/5 13.05.07', '2024-03-05T13:05:07'],
    ['05-Mar-2024 13:05', '2024-03-05T13:05:00'],
    ['5. März 2024 13:05', '2024-03-05T13:05:00'],
    ['Mar 5, 2024 1:05 PM', '2024-03-05T13:05:00'],
    ['Tue 5 Mar 2024 1:05:00 p.m.', '2024-03-05T13:05:00'],
    ['2024 March 05 13:05', '2024-03-05T13:05:00'],
    ['20240305T130507', '2024-03-05T13:05:07'],
    ['20240305 13:05', '2024-03-05T13:05:00'],
    ['20240305130507', '2024-03-05T13:05:07'],
    ['202403051305', '2024-03-05T13:05:00'],
    ['05/03/2024 12:30 AM', '2024-03-05T00:30:00'],
    ['05/03/2024 12:30 pm', '2024-03-05T12:30:00'],
    ['05/03/2024 24:00', '2024-03-06T00:00:00'],
    ['29.02.2024 00:00', '2024-02-29T00:00:00'],
  ])('%s', (text, expected) => expect(read(text)).toBe(expected));

  it.each([
    ['2024-03-05T13:05:07Z', '2024-03-05T13:05:07 0'],
    ['2024-03-05 13:05 UTC', '2024-03-05T13:05:00 0'],
    ['2024-03-05 13:05:07+01:00', '2024-03-05T13:05:07 1'],
    ['2024-03-05 13:05:07.5-0330', '2024-03-05T13:05:07 -3.5'],
    ['05/03/2024 13:05 GMT+2', '2024-03-05T13:05:00 2'],
    ['2024-03-05 13:05 -05:00', '2024-03-05T13:05:00 -5'],
  ])('%s says its offset', (text, expected) => expect(read(text)).toBe(expected));

  it('puts month or year in front when that is the order', () => {
    expect(read('03/05/2024 13:05', 'month-day-year')).toBe('2024-03-05T13:05:00');
    expect(read('24/03/05 13:05', 'year-month-day')).toBe('2024-03-05T13:05:00');
    expect(read('2024-03-05 13:05', 'month-day-year')).toBe('2024-03-05T13:05:00');
  });

  it('reads seconds and milliseconds since 1970, and day numbers', () => {
    // date -u -d @1709643907
    expect(read('1709643907', 'epoch-seconds')).toBe('2024-03-05T13:05:07 0');
    expect(read('1709643907250', 'epoch-seconds')).toBe('2024-03-05T13:05:07 0');
    // 45356 is 5 March 2024 (25569 is 1970-01-01, and 19787 days later)
    expect(read('45356.5', 'day-number')).toBe('2024-03-05T12:00:00');
    expect(read('4.5', 'day-number')).toBeNull();
  });

  it.each([
    '',
    'battery low',
    '05/03/2024',
    '13:05',
    '31/02/2024 10:00',
    '05/13/2024 10:00',
    '05/03/2024 25:00',
    '05/03/2024 10:60',
    '05/03/2024 13:05 PM PM 4',
    '05/03/2024 10:00 4.5',
    '05/03/1969 10:00',
    '-18.4',
    '12345678901234567890 10:00',
  ])('%s is none', (text) => expect(read(text)).toBeNull());
});
