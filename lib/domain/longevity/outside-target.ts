/**
 * Time that a store spent outside its target: above or below a band around it. Between readings the climate runs straight
 * from one to the next, so that a crossing falls between them; through gaps nothing is known and nothing is counted.
 */
import type { StoreClimate } from './store-climate';

/** The quantity and the band that it is meant to stay in. */
export interface TargetBand {
  of: 'temperatureC' | 'relativeHumidity';
  lower: number;
  upper: number;
}

export interface TimeOutside {
  /** hours within reach of readings of the quantity */
  hoursLogged: number;
  hoursAbove: number;
  hoursBelow: number;
  /** extremes of the readings themselves; null where there are none */
  lowest: number | null;
  highest: number | null;
}

/** A stretch outside the band, short returns into it included. */
export interface TargetExcursion {
  side: 'above' | 'below';
  fromEpochSeconds: number;
  toEpochSeconds: number;
  /** the farthest reading, and when it was taken */
  peak: number;
  peakEpochSeconds: number;
}

const SECONDS_PER_HOUR = 3600;
/**
 * Back inside, or out of sight, for less than this belongs to the same trouble: a compressor that runs for an hour mends
 * nothing. Our own choice.
 */
const PAUSE_SECONDS = 6 * SECONDS_PER_HOUR;

/**
 * @param climate           from `storeClimate`
 * @param band              lower <= upper, in the quantity's own unit (humidity 0-1)
 * @param fromEpochSeconds  seconds since 1970-01-01 UTC
 * @param toEpochSeconds    the same, >= fromEpochSeconds
 * @returns hours logged, above and below; additive over stretches
 * @throws RangeError when the band or the stretch runs backwards
 * Checked against a sum by the second in tests/domain/longevity/outside-target.test.ts
 */
export function timeOutside(
  climate: StoreClimate,
  band: TargetBand,
  fromEpochSeconds: number,
  toEpochSeconds: number,
): TimeOutside {
  requireBand(band);
  const sum = { hoursLogged: 0, hoursAbove: 0, hoursBelow: 0 };
  forEachPiece(climate, band.of, fromEpochSeconds, toEpochSeconds, ({ from, to, atFrom, atTo }) => {
    const hours = (to - from) / SECONDS_PER_HOUR;
    sum.hoursLogged += hours;
    sum.hoursAbove += hours * shareAbove(atFrom, atTo, band.upper);
    sum.hoursBelow += hours * shareAbove(-atFrom, -atTo, -band.lower);
  });
  const { lowest, highest } = extremes(climate, band.of, fromEpochSeconds, toEpochSeconds);
  return { ...sum, lowest, highest };
}

/**
 * @param climate           from `storeClimate`
 * @param band              lower <= upper, in the quantity's own unit
 * @param fromEpochSeconds  seconds since 1970-01-01 UTC
 * @param toEpochSeconds    the same, >= fromEpochSeconds
 * @returns stretches outside the band in order of time, cut at the ends of the stretch asked about and at gaps
 * @throws RangeError when the band or the stretch runs backwards
 * Checked in tests/domain/longevity/outside-target.test.ts
 */
export function targetExcursions(
  climate: StoreClimate,
  band: TargetBand,
  fromEpochSeconds: number,
  toEpochSeconds: number,
): TargetExcursion[] {
  requireBand(band);
  const found: TargetExcursion[] = [];
  let current: TargetExcursion | null = null;
  const close = () => {
    if (current) found.push(current);
    current = null;
  };
  const extend = (side: 'above' | 'below', from: number, to: number, ends: readonly (readonly [number, number])[]) => {
    if (current && (current.side !== side || from - current.toEpochSeconds > PAUSE_SECONDS)) close();
    current ??= {
      side,
      fromEpochSeconds: from,
      toEpochSeconds: to,
      peak: side === 'above' ? -Infinity : Infinity,
      peakEpochSeconds: from,
    };
    current.toEpochSeconds = to;
    for (const [time, value] of ends) {
      if (side === 'above' ? value > current.peak : value < current.peak) {
        current.peak = value;
        current.peakEpochSeconds = time;
      }
    }
  };
  forEachPiece(climate, band.of, fromEpochSeconds, toEpochSeconds, ({ from, to, atFrom, atTo }) => {
    // Most pieces lie inside the band, and a store has hundreds of thousands.
    const isInside = (value: number) => value >= band.lower && value <= band.upper;
    if (isInside(atFrom) && isInside(atTo)) return;
    const ends = [[from, atFrom] as const, [to, atTo] as const];
    const above = stretchAbove(atFrom, atTo, band.upper);
    const below = stretchAbove(-atFrom, -atTo, -band.lower);
    const at = (share: number) => from + (to - from) * share;
    const sides = [
      ...(above ? [['above', ...above] as const] : []),
      ...(below ? [['below', ...below] as const] : []),
    ].sort((a, b) => a[1] - b[1]);
    for (const [side, start, end] of sides) extend(side, at(start), at(end), ends);
  });
  close();
  return found;
}

interface Piece {
  from: number;
  to: number;
  atFrom: number;
  atTo: number;
}

/** The straight pieces between neighbouring readings within reach of one another, cut to a stretch. */
function forEachPiece(
  climate: StoreClimate,
  of: TargetBand['of'],
  fromEpochSeconds: number,
  toEpochSeconds: number,
  take: (piece: Piece) => void,
): void {
  if (!(toEpochSeconds >= fromEpochSeconds)) {
    throw new RangeError(`outside-target: the stretch runs backwards, got ${fromEpochSeconds} to ${toEpochSeconds}`);
  }
  const { epochSeconds } = climate.readings;
  const values = climate.readings[of];
  if (!values) return;
  const longest = climate.maximumGapHours * SECONDS_PER_HOUR;
  let last: number | null = null;
  let first = Math.max(0, firstAtOrAfter(epochSeconds, fromEpochSeconds) - 1);
  while (first > 0 && Number.isNaN(values[first])) first -= 1;
  for (let i = first; i < epochSeconds.length; i += 1) {
    const value = values[i] as number;
    // A humidity that was not read: the line runs on to the next one that was.
    if (Number.isNaN(value)) continue;
    const time = epochSeconds[i] as number;
    if (last !== null) {
      const [begins, atBegin] = [epochSeconds[last] as number, values[last] as number];
      const from = Math.max(begins, fromEpochSeconds);
      const to = Math.min(time, toEpochSeconds);
      if (time - begins <= longest && to > from) {
        const at = (when: number) => atBegin + ((value - atBegin) * (when - begins)) / (time - begins);
        take({ from, to, atFrom: from === begins ? atBegin : at(from), atTo: to === time ? value : at(to) });
      }
    }
    if (time >= toEpochSeconds) break;
    last = i;
  }
}

function extremes(climate: StoreClimate, of: TargetBand['of'], fromEpochSeconds: number, toEpochSeconds: number) {
  const { epochSeconds } = climate.readings;
  const values = climate.readings[of];
  let lowest: number | null = null;
  let highest: number | null = null;
  for (let i = firstAtOrAfter(epochSeconds, fromEpochSeconds); i < epochSeconds.length && values; i += 1) {
    if ((epochSeconds[i] as number) >= toEpochSeconds) break;
    const value = values[i] as number;
    if (Number.isNaN(value)) continue;
    if (lowest === null || value < lowest) lowest = value;
    if (highest === null || value > highest) highest = value;
  }
  return { lowest, highest };
}

function firstAtOrAfter(ascending: Float64Array, wanted: number): number {
  let low = 0;
  let high = ascending.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ascending[middle] as number) < wanted) low = middle + 1;
    else high = middle;
  }
  return low;
}

/** Where on its way from one value to another a straight line lies above a limit, as shares of the way; null: nowhere. */
function stretchAbove(from: number, to: number, limit: number): readonly [number, number] | null {
  if (from <= limit && to <= limit) return null;
  if (from > limit && to > limit) return [0, 1];
  const crossing = (limit - from) / (to - from);
  return from > limit ? [0, crossing] : [crossing, 1];
}

function shareAbove(from: number, to: number, limit: number): number {
  const stretch = stretchAbove(from, to, limit);
  return stretch ? stretch[1] - stretch[0] : 0;
}

function requireBand({ lower, upper }: TargetBand): void {
  if (!(lower <= upper)) throw new RangeError(`outside-target: the band runs backwards, got ${lower} to ${upper}`);
}
