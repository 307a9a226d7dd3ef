/**
 * What a logger in a store would have written: the seasons, the hours of the day, wandering from day to day, and the
 * mishaps of the scenario. Nights without a reading and longer gaps happen, as they do with real loggers.
 */
import { toEpochDay } from '../../lib/domain/calendar/calendar-date';
import { randomFor } from '../random';
import type { ClimateStory, MishapStory } from '../scenarios/story';
import type { DemoCalendar } from './demo-calendar';

export interface Readings {
  epochSeconds: Float64Array;
  temperatureC: Float64Array;
  /** 0-1; NaN where the logger has no humidity */
  relativeHumidity: Float64Array;
}

const SECONDS_PER_HOUR = 3600;
const HOURS_PER_DAY = 24;
const DAYS_PER_YEAR = 365.25;
/** Day of the year on which an island is warmest. */
const WARMEST_DAY = 215;
const WARMEST_HOUR = 15;
/** How much of one hour's deviation is left in the next. */
const MEMORY_PER_HOUR = 0.96;
/** Hours in which a store takes on the air around it, or recovers. */
const WARMING_HOURS = 20;
const CHANCE_OF_A_MISSED_READING = 0.002;
const HUMIDITY_LIMITS = { min: 0.05, max: 0.94 };

/**
 * @param name      of the store: names its stream of chance
 * @param climate   how warm and damp it is, and what went wrong
 * @param calendar  the demo's dates
 * @returns readings up to the beginning of today, in time order
 * Checked in tests/seed-demo/store-readings.test.ts
 */
export function storeReadings(name: string, climate: ClimateStory, calendar: DemoCalendar): Readings {
  const random = randomFor(`readings ${name}`);
  const endDay = toEpochDay(calendar.today);
  const firstDay = endDay - Math.round(climate.yearsLogged * DAYS_PER_YEAR);
  const gaps = climate.gaps.map((gap) => dayRange(gap, calendar));
  const mishaps = climate.mishaps.map((mishap) => ({ ...mishap, range: dayRange(mishap, calendar) }));
  const rows: [number, number, number][] = [];
  const step = climate.everyHours;
  const memory = MEMORY_PER_HOUR ** step;
  const fresh = Math.sqrt(1 - memory * memory);
  const uptake = 1 - Math.exp(-step / WARMING_HOURS);
  let wander = random.normal();
  let humidityWander = random.normal();
  // How far the store has taken on the air of the mishap: 0 not at all, 1 wholly.
  let taken = 0;
  let mishapOf: MishapStory | null = null;
  for (let hour = firstDay * HOURS_PER_DAY; hour < endDay * HOURS_PER_DAY; hour += step) {
    const day = hour / HOURS_PER_DAY;
    const season = Math.cos((2 * Math.PI * (dayOfYear(day) - WARMEST_DAY)) / DAYS_PER_YEAR);
    const hourly = Math.cos((2 * Math.PI * ((hour % HOURS_PER_DAY) - WARMEST_HOUR)) / HOURS_PER_DAY);
    wander = memory * wander + fresh * random.normal();
    humidityWander = memory * humidityWander + fresh * random.normal();
    const running = mishaps.find(({ range }) => day >= range.from && day < range.to) ?? null;
    if (running) mishapOf = running;
    taken += ((running ? 1 : 0) - taken) * uptake;

    const { temperature, humidity } = climate;
    const usualC =
      temperature.mean + temperature.season * season + temperature.hourly * hourly + temperature.wander * wander;
    const roomC = mishapOf ? mishapOf.temperatureC + 1.5 * wander + 1.2 * hourly : usualC;
    const temperatureC = usualC + taken * (roomC - usualC);
    let relativeHumidity = Number.NaN;
    if (humidity) {
      const usual = humidity.mean + humidity.season * season + humidity.wander * humidityWander;
      const air = mishapOf ? mishapOf.relativeHumidity + 0.03 * humidityWander : usual;
      relativeHumidity = usual + taken * (air - usual);
      relativeHumidity = Math.min(HUMIDITY_LIMITS.max, Math.max(HUMIDITY_LIMITS.min, relativeHumidity));
    }
    const missed = random.fraction() < CHANCE_OF_A_MISSED_READING;
    if (missed || gaps.some((gap) => day >= gap.from && day < gap.to)) continue;
    rows.push([hour * SECONDS_PER_HOUR, roundTo(temperatureC, 10), roundTo(relativeHumidity, 200)]);
  }
  return {
    epochSeconds: Float64Array.from(rows, (row) => row[0]),
    temperatureC: Float64Array.from(rows, (row) => row[1]),
    relativeHumidity: Float64Array.from(rows, (row) => row[2]),
  };
}

function dayRange({ season, from, days }: { season: number; from: string; days: number }, calendar: DemoCalendar) {
  const start = toEpochDay(calendar.dayIn(season, from));
  return { from: start, to: start + days };
}

const dayOfYear = (epochDay: number) => ((epochDay % DAYS_PER_YEAR) + DAYS_PER_YEAR) % DAYS_PER_YEAR;

/** Loggers write tenths of a degree and half percents of humidity. */
const roundTo = (value: number, perUnit: number) => Math.round(value * perUnit) / perUnit;
