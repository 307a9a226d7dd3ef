import 'server-only';
import { type CalendarDate, fromEpochDay, toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { climateCost } from '@/lib/domain/longevity/climate-cost';
import { climateCoverage } from '@/lib/domain/longevity/climate-coverage';
import { climateExcursions } from '@/lib/domain/longevity/climate-excursions';
import { FORECAST_LEVEL, type ForecastPoint, forecastCurve, yearlyDays } from '@/lib/domain/longevity/forecast-curve';
import type { LotPosterior } from '@/lib/domain/longevity/lot-model';
import { type PacketAgeing, packetAgeing } from '@/lib/domain/longevity/packet-ageing';
import { storeClimate } from '@/lib/domain/longevity/store-climate';
import { timeToThreshold } from '@/lib/domain/longevity/time-to-threshold';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import type { WhatIf } from '@/lib/schemas/what-if';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import type { CropJudging } from '../judging/load-crop-judging';
import type { StoreClimates } from '../judging/store-climates';
import { type LotFallsBelow, lotFallsBelow } from './lot-falls-below';

export interface ForecastTest {
  number: string;
  setOn: CalendarDate;
  day: number;
  alive: number;
  sown: number;
  proportion: number;
  lower: number;
  upper: number;
}

export interface ForecastEvent {
  fromDay: number;
  toDay: number;
  storeName: string;
  timesFaster: number;
  targetDays: number;
}

export interface WhatIfForecast {
  ok: true;
  temperatureC: number;
  moisturePercent: number;
  storeName: string | null;
  curve: ForecastPoint[];
  /** years until the median is at the threshold, in the present store and in the other; null beyond the horizon */
  yearsNow: number | null;
  yearsThen: number | null;
  notes: string[];
}

export interface LotForecast {
  curve: ForecastPoint[];
  table: ForecastPoint[];
  tests: ForecastTest[];
  events: ForecastEvent[];
  threshold: number;
  todayDay: number;
  testDueDay: number | null;
  lastSafeSeason: { season: number; day: number } | null;
  ageing: Extract<PacketAgeing, { ok: true }>;
  /** of all days in store, the share whose climate was logged */
  shareRead: number;
  yearsToThreshold: number | null;
  fallsBelow: LotFallsBelow;
  present: { temperatureC: number; moisturePercent: number };
  whatIf: WhatIfForecast | { ok: false; reason: string } | null;
}

const DAYS_PER_YEAR = 365.25;
const LEAST_DAYS_AHEAD = 8 * DAYS_PER_YEAR;
const MOST_DAYS_AHEAD = 60 * DAYS_PER_YEAR;
const WHAT_IF_STORE = 'what-if';

/** The forecast of an evaluated lot as the page draws and lists it; null where none holds. */
export function lotForecast(
  evaluated: EvaluatedLot,
  crop: CropJudging,
  climates: StoreClimates,
  whatIf: WhatIf,
  today: CalendarDate,
): LotForecast | null {
  const { ageing, posterior, judgement, periods } = evaluated;
  const last = periods.at(-1);
  const first = periods[0];
  if (!ageing?.ok || !posterior || judgement.threshold === null || !first || !last || !crop.seed) return null;
  const todayDay = toEpochDay(today);
  const fromDay = Math.min(toEpochDay(first.from), todayDay - 30);
  const times = { posterior, probitsLostNow: ageing.probitsAt(todayDay), threshold: judgement.threshold };
  const daysToThreshold = timeToThreshold({ ...times, ratePerDay: ageing.ratePerDay }).median;
  const other = alternative({ crop, climates, whatIf, today, ageing, present: last, times, daysToThreshold });
  const toDay = Math.round(todayDay + horizon(daysToThreshold, other?.ok ? other.daysThen : null));
  const moves = periods.map((period) => toEpochDay(period.from));
  const events = eventsOf(evaluated, crop, climates);
  const extraDays = [todayDay, ...moves, ...events.flatMap((event) => [event.fromDay, event.toDay])];
  const shape = { posterior, fromDay, toDay };
  const testDueDay = toEpochDay(judgement.testDue.dueOn);
  return {
    curve: forecastCurve({ ...shape, probitsAt: ageing.probitsAt, extraDays }),
    table: rowsOf(yearlyDays(fromDay, toDay), ageing.probitsAt, posterior),
    tests: testsOf(evaluated),
    events,
    threshold: judgement.threshold,
    todayDay,
    testDueDay,
    lastSafeSeason: lastSafe(judgement.lastSafeSeason, crop.sowingMonth),
    ageing,
    shareRead: coverageOf(evaluated, climates),
    yearsToThreshold: inYears(daysToThreshold),
    fallsBelow: lotFallsBelow({ posterior, ageing, threshold: judgement.threshold, today }),
    present: {
      temperatureC: climates.climateOf(last.climateId).target.temperatureC,
      moisturePercent: ageing.moisturePercent,
    },
    whatIf: other?.ok
      ? {
          ok: true,
          temperatureC: other.temperatureC,
          moisturePercent: other.moisturePercent,
          storeName: other.storeName,
          curve: forecastCurve({ posterior, fromDay: todayDay, toDay, probitsAt: other.probitsAt, steps: 40 }),
          yearsNow: inYears(daysToThreshold),
          yearsThen: inYears(other.daysThen),
          notes: other.notes,
        }
      : other,
  };
}

function rowsOf(days: number[], probitsAt: (day: number) => number, posterior: LotPosterior): ForecastPoint[] {
  return days.flatMap((day) =>
    forecastCurve({ posterior, probitsAt, fromDay: day, toDay: day + 1, steps: 1 }).slice(0, 1),
  );
}

function testsOf({ tests }: EvaluatedLot): ForecastTest[] {
  return tests.map((test) => {
    const { lower, upper } = binomialInterval({ successes: test.alive, trials: test.sown, level: FORECAST_LEVEL });
    return {
      number: test.number,
      setOn: test.setOn,
      day: toEpochDay(test.setOn),
      alive: test.alive,
      sown: test.sown,
      proportion: test.alive / test.sown,
      lower,
      upper,
    };
  });
}

function eventsOf({ periods }: EvaluatedLot, crop: CropJudging, climates: StoreClimates): ForecastEvent[] {
  const seed = crop.seed;
  if (!seed) return [];
  return periods.flatMap((period) => {
    const climate = climates.climateOf(period.climateId);
    return climateExcursions(climate, seed.constants, toEpochDay(period.from), toEpochDay(period.to)).map(
      (excursion) => {
        const { fromDay, toDay } = excursion;
        const storeName = climates.nameOf(period.storeId);
        // Open seed took up moisture too: it aged by more than the warmth alone.
        const cost = climateCost([period], climates.climateOf, seed, fromDay, toDay);
        if (!cost.ok) return { ...excursion, storeName };
        const targetDays = cost.days + cost.normalDays;
        return { ...excursion, storeName, targetDays, timesFaster: targetDays / cost.days };
      },
    );
  });
}

function coverageOf({ periods }: EvaluatedLot, climates: StoreClimates): number {
  let days = 0;
  let read = 0;
  for (const { climateId, from, to } of periods) {
    const coverage = climateCoverage(climates.climateOf(climateId), toEpochDay(from), toEpochDay(to));
    read += coverage.daysRead;
    days += coverage.daysRead + coverage.daysAssumed;
  }
  return days === 0 ? 0 : read / days;
}

interface AlternativeQuestion {
  crop: CropJudging;
  climates: StoreClimates;
  whatIf: WhatIf;
  today: CalendarDate;
  ageing: Extract<PacketAgeing, { ok: true }>;
  present: { climateId: string };
  times: { posterior: LotPosterior; probitsLostNow: number; threshold: number };
  daysToThreshold: number | null;
}

/** The seed from today on, sealed, in another store or at another temperature and moisture. */
function alternative({ crop, climates, whatIf, today, ageing, present, times }: AlternativeQuestion) {
  if (whatIf.store === undefined && whatIf.temperature === undefined && whatIf.moisture === undefined) return null;
  if (!crop.seed) return null;
  const base = climates.climateOf(storeOrPresent(whatIf.store, climates, present.climateId));
  const climate =
    whatIf.temperature === undefined
      ? base
      : storeClimate(
          { epochSeconds: new Float64Array(0), temperatureC: new Float64Array(0) },
          { ...base.target, temperatureC: whatIf.temperature },
        );
  const moisturePercent = whatIf.moisture ?? ageing.moisturePercent;
  const period = {
    storeId: WHAT_IF_STORE,
    climateId: WHAT_IF_STORE,
    from: today,
    to: today,
    days: 0,
    hermetic: true,
    moisturePercent,
  };
  const elsewhere = packetAgeing([period], () => climate, crop.seed);
  if (!elsewhere.ok) return elsewhere;
  const todayDay = toEpochDay(today);
  return {
    ok: true as const,
    temperatureC: climate.target.temperatureC,
    moisturePercent,
    storeName: whatIf.store ? climates.nameOf(whatIf.store) || null : null,
    probitsAt: (day: number) => times.probitsLostNow + (day - todayDay) * elsewhere.ratePerDay,
    daysThen: timeToThreshold({ ...times, ratePerDay: elsewhere.ratePerDay }).median,
    notes: elsewhere.notes,
  };
}

function storeOrPresent(wanted: string | undefined, climates: StoreClimates, present: string): string {
  return wanted && climates.nameOf(wanted) ? wanted : present;
}

function horizon(...daysToThreshold: (number | null)[]): number {
  const longest = Math.max(...daysToThreshold.map((days) => days ?? 0));
  return Math.min(MOST_DAYS_AHEAD, Math.max(LEAST_DAYS_AHEAD, longest * 1.35));
}

function lastSafe(season: number | 'past' | 'beyond horizon' | null, sowingMonth: number) {
  if (typeof season !== 'number') return null;
  return { season, day: toEpochDay(`${season}-${String(sowingMonth).padStart(2, '0')}-01`) };
}

const inYears = (days: number | null): number | null => (days === null ? null : days / DAYS_PER_YEAR);

/** Days of the first of January within a curve, for the axis. */
export function yearTicks(fromDay: number, toDay: number): number[] {
  return yearlyDays(fromDay, toDay, 12)
    .slice(1, -1)
    .map((day) => toEpochDay(`${fromEpochDay(day).slice(0, 4)}-01-01`));
}
