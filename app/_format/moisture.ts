import { formatDate } from '@/app/_format/figures';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { MoistureSource } from '@/lib/domain/moisture/moisture-source';

/** 8.04 -> '8.0 %'. */
export const formatMoisture = (percent: number): string => `${percent.toFixed(1)} %`;

/** A small uncertainty in points of moisture, with one figure that counts: 0.0079 -> '0.008', 0.12 -> '0.1'. */
export function formatPoints(points: number): string {
  if (points === 0) return '0';
  const decimals = Math.min(4, Math.max(0, -Math.floor(Math.log10(points))));
  return points.toFixed(decimals);
}

/** A stretch of time: '7 hours', '3.5 days', '12 days'. */
export function formatStretch(hours: number): string {
  if (hours < 1) return 'under an hour';
  if (hours < 48) return plural(Math.round(hours), 'hour');
  const days = hours / 24;
  return days < 10 ? `${Number(days.toFixed(1))} days` : `${Math.round(days)} days`;
}

/** A moment of the weighings' clock: '21 Nov 2026, about 14:00' where they carry dates, else 'hour 38'. */
export function formatMoment(hours: number, hourZero: string | null): string {
  if (hourZero === null) return `hour ${Number(hours.toFixed(1))}`;
  const whole = Math.round(hours);
  const date = formatDate(addDays(hourZero, Math.floor(whole / 24)));
  return `${date}, about ${String(whole - 24 * Math.floor(whole / 24)).padStart(2, '0')}:00`;
}

/** Midnight of a day since the first weighing, as an axis marks it: '18 Nov'. The year stands in the table. */
export const formatDayOfRun = (hourZero: string, day: number): string =>
  formatDate(addDays(hourZero, day)).replace(/ \d{4}$/, '');

/** Where a moisture comes from, to stand behind its figure: 'measured 1 Mar 2024', 'assumed'. */
export function moistureSourceWords(source: MoistureSource): string {
  switch (source.kind) {
    case 'measured': {
      const last = source.tests.at(-1);
      const on = last ? ` ${formatDate(last.testedOn)}` : '';
      return source.tests.length > 1 ? `mean of ${source.tests.length} tests, the last${on}` : `measured${on}`;
    }
    case 'written':
      return 'written at packing';
    case 'air':
      return 'by the air of the store';
    case 'assumed':
      return 'assumed';
  }
}

const plural = (count: number, thing: string): string => `${count} ${thing}${count === 1 ? '' : 's'}`;
