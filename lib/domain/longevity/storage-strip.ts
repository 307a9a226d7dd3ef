/**
 * The storage history of a packet as a picture: where it lay, in what, how moist and how warm, and how it aged meanwhile.
 * It is drawn from the very stays and the very ageing that the forecast uses; nothing is reckoned a second time.
 */
import { type CalendarDate, toEpochDay } from '../calendar/calendar-date';
import type { CareKind } from '../stock/packet-care';
import type { Placement, StoragePeriod } from '../stock/storage-history';
import { climateCoverage } from './climate-coverage';
import { meanTemperatureC } from './mean-temperature';
import type { PacketAgeing } from './packet-ageing';
import type { StoreClimate } from './store-climate';

export interface StripStay {
  /** days since 1970-01-01; toDay not included */
  fromDay: number;
  toDay: number;
  storeId: string;
  climateId: string;
  container: string;
  hermetic: boolean;
  /** percent of fresh weight; null: nobody knows, or an open container, whose seed follows the air */
  moisturePercent: number | null;
  /** nobody wrote it: tests of the packet tell it */
  moistureMeasured: boolean;
  targetTemperatureC: number;
  meanTemperatureC: number;
  /** of its days, the share that was logged, 0-1; for the others the target stands in */
  shareRead: number;
  /** probits lost during it, and from the first day in store to its end; null without a forecast */
  probits: number | null;
  probitsSoFar: number | null;
}

/** A slice of a stay for drawing its temperature. */
export interface StripCell {
  fromDay: number;
  toDay: number;
  meanTemperatureC: number;
  /** at least half of it was logged */
  measured: boolean;
}

export type StripEventKind = 'moved' | 'repacked' | 'moved and repacked' | 'climate changed' | CareKind;

export interface StripEvent {
  day: number;
  what: StripEventKind;
  /** index of the stay that began with it; null for what was done to the container within a stay */
  stay: number | null;
}

export interface StorageStrip {
  /** day of harvest, or of the first placement should that be earlier */
  fromDay: number;
  toDay: number;
  /** where the first stay begins: before it ageing is not reckoned (drying, cleaning) */
  storedDay: number;
  stays: StripStay[];
  cells: StripCell[];
  events: StripEvent[];
  /** ageing at the ends of cells; empty without a forecast */
  line: { day: number; probits: number }[];
}

/** Slices in the picture, about: half-pixels of a phone tell nobody anything. */
const CELLS = 72;
const SHORTEST_CELL_DAYS = 7;

/**
 * @param harvestedOn  of the lot
 * @param placements   of the packet, in the order they happened
 * @param periods      its stays up to today, each under one climate, as the forecast takes them; at least one
 * @param ageing       of these periods, from `packetAgeing`; null where no constants are chosen
 * @param climateOf    a climate by its id
 * @param care         what was done to the container, in order of day
 * @returns stays contiguous from the first placement to today (those without days left out), whose ageing adds up to
 *          that of the packet
 * @throws RangeError when there is no period
 * Checked in tests/domain/longevity/storage-strip.test.ts
 */
export function storageStrip({
  harvestedOn,
  placements,
  periods,
  ageing,
  climateOf,
  care,
}: {
  harvestedOn: CalendarDate;
  placements: readonly Placement[];
  periods: readonly StoragePeriod[];
  ageing: PacketAgeing | null;
  climateOf: (climateId: string) => StoreClimate;
  care: readonly { on: CalendarDate; what: CareKind }[];
}): StorageStrip {
  const [first, last] = [periods[0], periods.at(-1)];
  if (!first || !last) throw new RangeError('storageStrip: periods must not be empty');
  const storedDay = toEpochDay(first.from);
  const toDay = toEpochDay(last.to);
  const probitsAt = ageing?.ok ? ageing.probitsAt : null;
  const stays = periods
    .filter(({ from, to }) => from < to)
    .map((period): StripStay => {
      const days = { fromDay: toEpochDay(period.from), toDay: toEpochDay(period.to) };
      const climate = climateOf(period.climateId);
      const before = probitsAt?.(days.fromDay) ?? null;
      const after = probitsAt?.(days.toDay) ?? null;
      return {
        ...days,
        storeId: period.storeId,
        climateId: period.climateId,
        container: placements.findLast(({ from }) => from <= period.from)?.container ?? '',
        hermetic: period.hermetic,
        moisturePercent: period.hermetic ? period.moisturePercent : null,
        moistureMeasured: period.measured !== undefined,
        targetTemperatureC: climate.target.temperatureC,
        meanTemperatureC: meanTemperatureC(climate, days.fromDay, days.toDay),
        shareRead: climateCoverage(climate, days.fromDay, days.toDay).shareRead,
        probits: before === null || after === null ? null : after - before,
        probitsSoFar: after,
      };
    });
  const cells = stays.flatMap((stay) => cellsOf(stay, climateOf(stay.climateId), cellDays(toDay - storedDay)));
  return {
    fromDay: Math.min(toEpochDay(harvestedOn), storedDay),
    toDay,
    storedDay,
    stays,
    cells,
    events: [...eventsBetween(stays), ...careEvents(care, storedDay, toDay)].sort((a, b) => a.day - b.day),
    line: probitsAt ? lineThrough([storedDay, ...cells.map((cell) => cell.toDay)], probitsAt) : [],
  };
}

const lineThrough = (days: number[], probitsAt: (day: number) => number) =>
  days.map((day) => ({ day, probits: probitsAt(day) }));

const cellDays = (days: number) => Math.max(SHORTEST_CELL_DAYS, Math.ceil(days / CELLS));

function cellsOf(stay: StripStay, climate: StoreClimate, days: number): StripCell[] {
  const cells: StripCell[] = [];
  for (let fromDay = stay.fromDay; fromDay < stay.toDay; fromDay += days) {
    const toDay = Math.min(stay.toDay, fromDay + days);
    cells.push({
      fromDay,
      toDay,
      meanTemperatureC: meanTemperatureC(climate, fromDay, toDay),
      measured: climateCoverage(climate, fromDay, toDay).shareRead >= 0.5,
    });
  }
  return cells;
}

/** What made one stay another. */
function eventsBetween(stays: readonly StripStay[]): StripEvent[] {
  return stays.slice(1).map((stay, index): StripEvent => {
    const before = stays[index] as StripStay;
    const moved = stay.storeId !== before.storeId;
    const repacked = stay.container !== before.container || stay.moisturePercent !== before.moisturePercent;
    const what = moved ? (repacked ? 'moved and repacked' : 'moved') : repacked ? 'repacked' : 'climate changed';
    // The same store, container and moisture: packed anew into the like, unless the climate became another.
    const anew = what === 'climate changed' && stay.climateId === before.climateId;
    return { day: stay.fromDay, what: anew ? 'repacked' : what, stay: index + 1 };
  });
}

function careEvents(
  care: readonly { on: CalendarDate; what: CareKind }[],
  storedDay: number,
  toDay: number,
): StripEvent[] {
  return (
    care
      .map(({ on, what }) => ({ day: toEpochDay(on), what, stay: null }))
      .filter(({ day }) => day >= storedDay && day <= toDay)
      // Sealed twice on a day is one mark.
      .filter(({ day, what }, index, all) => all.findIndex((one) => one.day === day && one.what === what) === index)
  );
}
