/** A cost in ageing, said as time in a store at its target. */

const NUMBERS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];
const DAYS_PER_YEAR = 365.25;
const DAYS_PER_MONTH = DAYS_PER_YEAR / 12;
const UNITS = [
  { name: 'day', days: 1, below: 14 },
  { name: 'week', days: 7, below: 2 * DAYS_PER_MONTH },
  { name: 'month', days: DAYS_PER_MONTH, below: 2 * DAYS_PER_YEAR },
  { name: 'year', days: DAYS_PER_YEAR, below: Infinity },
] as const;
/** Less than this is no cost that anybody can see. */
export const LEAST_NORMAL_DAYS = 0.5;

/**
 * 'eight normal months', 'one normal day', '26 normal years'.
 *
 * @param normalDays  days at the target, either sign; the sign is the caller's to say
 */
export function normalTime(normalDays: number): string {
  const days = Math.abs(normalDays);
  const unit = UNITS.find(({ below }) => days < below) ?? UNITS[3];
  const count = Math.round(days / unit.days);
  return `${NUMBERS[count] ?? count} normal ${unit.name}${count === 1 ? '' : 's'}`;
}

/** In a table: 'eight normal months', 'spared two normal days', 'next to nothing'. */
export function costInWords(normalDays: number): string {
  if (Math.abs(normalDays) < LEAST_NORMAL_DAYS) return 'next to nothing';
  return normalDays < 0 ? `spared ${normalTime(normalDays)}` : normalTime(normalDays);
}
