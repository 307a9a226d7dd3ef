/**
 * Whether 03/04/2024 is April or March, from how a logger writes: at a steady interval and forward (or backward) all
 * along. The right order gives an even run of times; a wrong one leaps by months at every midnight, or names days that
 * no calendar has. A file within one day shows nothing, and then the user is asked.
 */
import type { LoggerDateOrder } from './logger-layout';
import { type WallTime, wallTimeReader } from './wall-time';

export interface DateCell {
  date: string;
  /** null when the date's cell holds the time too */
  time: string | null;
}

const WRITTEN_ORDERS = ['day-month-year', 'month-day-year', 'year-month-day'] as const;
const YEAR_IN_FRONT = /^\d{4}/;
/** Rows that are no readings may stand among them. */
const MOST_UNREADABLE = 0.03;

/**
 * @param head    cells of readings that follow one another in the file
 * @param spread  cells of later readings, in their order
 * @param latestInstant  seconds since 1970 UTC: an order that leads beyond is wrong
 * @returns the one order that reads the file evenly; 'open' when several do equally well; null when none reads it
 * Checked in tests/domain/logger/guess-date-order.test.ts
 */
export function guessDateOrder(
  head: readonly DateCell[],
  spread: readonly DateCell[],
  latestInstant: number,
): LoggerDateOrder | 'open' | null {
  const readable = WRITTEN_ORDERS.map((order) => ({ order, ...runOf(order, head, spread, latestInstant) })).filter(
    (run) => run.unreadable <= MOST_UNREADABLE * (head.length + spread.length),
  );
  if (readable.length === 0) return numbersOf(head);
  const best = readable.reduce((one, other) => (other.uneven < one.uneven ? other : one));
  const asGood = readable.filter((run) => run.uneven === best.uneven);
  // The same moments whichever order is taken: names of months, or the year in front.
  if (asGood.some((run) => run.fingerprint !== best.fingerprint)) return 'open';
  return YEAR_IN_FRONT.test(head[0]?.date ?? '') ? 'year-month-day' : best.order;
}

function runOf(
  order: (typeof WRITTEN_ORDERS)[number],
  head: readonly DateCell[],
  spread: readonly DateCell[],
  latestInstant: number,
) {
  const first = timesOf(order, head);
  const later = timesOf(order, spread);
  const all = [...first.times, ...later.times];
  const future = all.filter((time) => time > latestInstant + 86_400).length;
  return {
    unreadable: first.unreadable + later.unreadable + future,
    uneven: unevenSteps(first.times) + turns(later.times),
    fingerprint: `${all[0]} ${all[Math.floor(all.length / 2)]} ${all.at(-1)}`,
  };
}

function timesOf(order: LoggerDateOrder, cells: readonly DateCell[]) {
  const reader = wallTimeReader(order);
  const wall: WallTime = { seconds: 0, offsetSeconds: null };
  const times: number[] = [];
  for (const { date, time } of cells) {
    const text = time === null ? date : `${date} ${time}`;
    if (reader.read(text, 0, text.length, -1, -1, wall)) times.push(wall.seconds);
  }
  return { times, unreadable: cells.length - times.length };
}

/** Steps that are not about the usual one. */
function unevenSteps(times: readonly number[]): number {
  const steps = times.slice(1).map((time, index) => time - (times[index] as number));
  const usual = steps.toSorted((a, b) => a - b)[Math.floor(steps.length / 2)] ?? 0;
  return steps.filter((step) => Math.abs(step - usual) > 0.5 * Math.abs(usual)).length;
}

/** How often the times turn from forward to backward or back. */
function turns(times: readonly number[]): number {
  const signs = times.slice(1).map((time, index) => Math.sign(time - (times[index] as number)));
  const usual = signs.reduce((sum, sign) => sum + sign, 0) < 0 ? -1 : 1;
  return signs.filter((sign) => sign === -usual).length;
}

/** Times as plain numbers: seconds since 1970, or days of a spreadsheet program. */
function numbersOf(head: readonly DateCell[]): LoggerDateOrder | null {
  for (const order of ['epoch-seconds', 'day-number'] as const) {
    if (head.length > 0 && timesOf(order, head).unreadable <= MOST_UNREADABLE * head.length) return order;
  }
  return null;
}
