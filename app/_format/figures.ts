/** How figures are written on every screen: thin-spaced thousands, whole percents, dates as people say them. */

const THIN_SPACE = '\u202f';

/** 12345 -> '12 345' with thin spaces. */
export function formatCount(value: number): string {
  const sign = value < 0 ? '−' : '';
  return sign + String(Math.abs(Math.round(value))).replace(/\B(?=(\d{3})+$)/g, THIN_SPACE);
}

/** A proportion as a whole percent without the sign: 0.743 -> '74'. Never '100' or '0' for what is not quite so. */
export function formatPercentFigure(proportion: number): string {
  const rounded = Math.round(proportion * 100);
  if (rounded === 100 && proportion < 0.995) return '99';
  if (rounded === 0 && proportion > 0.005) return '1';
  return String(rounded);
}

/** 0.743 -> '74 %'. */
export const formatPercent = (proportion: number): string => `${formatPercentFigure(proportion)} %`;

/** A chance as counts: 0.69 -> '69 in 100'; tiny ones as 'under 1 in 100'. */
export function formatChance(chance: number): string {
  if (chance < 0.005) return 'under 1 in 100';
  if (chance > 0.995) return 'over 99 in 100';
  return `${Math.round(chance * 100)} in 100`;
}

/** Grams with three significant figures: 0.1234 -> '0.123 g', 1234 -> '1 234 g'. */
export function formatGrams(grams: number): string {
  if (Math.abs(grams) >= 1000) return `${formatCount(grams)} g`;
  return `${Number(grams.toPrecision(3))} g`.replace('-', '−');
}

const MONTHS = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'];
export const MONTH_NAMES = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** '2026-03-02' -> '2 Mar 2026'. Calendar dates only: no time zone is involved. */
export function formatDate(date: string): string {
  const [year, month, day] = date.split('-').map(Number);
  return `${day} ${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** '2026-03-02' -> 'Mar 2026'. */
export function formatMonth(date: string): string {
  const [year, month] = date.split('-').map(Number);
  return `${MONTHS[(month ?? 1) - 1]} ${year}`;
}

/** An instant in UTC, to the minute. */
export function formatInstant(instant: Date): string {
  return `${formatDate(instant.toISOString().slice(0, 10))}, ${instant.toISOString().slice(11, 16)} UTC`;
}

export const formatTemperature = (celsius: number): string => `${Math.round(celsius * 10) / 10} °C`.replace('-', '−');
