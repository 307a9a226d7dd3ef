import 'server-only';
import { type ForecastPoint, forecastCurve, yearlyDays } from '@/lib/domain/longevity/forecast-curve';
import type { LotJudgement } from '@/lib/domain/regrow/lot-judgement';
import { isWorthTesting } from '@/lib/domain/regrow/worth-testing';
import { connections, reader } from '../database/connections';
import type { EvaluatedLot } from '../judging/evaluate-lot';
import { evaluateAccession } from '../judging/judge-lots';
import { type CropJudging, loadCropJudging } from '../judging/load-crop-judging';
import { loadLots } from '../judging/load-lots';
import { type StoreClimates, storeClimates } from '../judging/store-climates';
import { today } from '../today';
import { type ForecastTest, type LotForecast, lotForecast } from './lot-forecast';

/** What is believed of a lot with or without one test. Proportions and chances are 0-1. */
export interface Belief {
  viability: { median: number; lower: number; upper: number };
  /** a fraction of the initial viability moves with what is believed of that */
  threshold: number;
  chanceBelow: number;
  /** null: another test would only use up seed */
  nextTestOn: string | null;
  lastSafeSeason: LotJudgement['lastSafeSeason'];
  /** day of that season's sowing, for the picture */
  lastSafeDay: number | null;
  curve: ForecastPoint[];
  table: ForecastPoint[];
}

export type WhatWasLearnt =
  | {
      ok: true;
      lotNumber: string;
      before: Belief;
      now: Belief;
      /** with what each leaves open, nine times in ten */
      tests: (ForecastTest & { isThis: boolean })[];
      /** no other test of the lot finished after this one, so 'before' is what was believed then */
      isNewest: boolean;
      todayDay: number;
    }
  | { ok: false; reason: string };

const YEARS_LISTED = 14;

/**
 * What one test has changed of what is believed about its lot: the lot evaluated today with all its tests, and with all
 * but this one, under the same storage history. Both take the one path that judgements take (evaluateLot), so 'now' is
 * what the lists say, and 'before' is what they said on the same day before the newest test was written down.
 *
 * @param number  of a test that speaks for its lot
 * @returns null when there is no such test, or it was corrected; { ok: false } with a sentence where the lot has no forecast
 * Checked in tests/server/queries/what-was-learnt.test.ts
 */
export async function whatWasLearnt(number: string): Promise<WhatWasLearnt | null> {
  const test = await reader().germinationTest.findUnique({
    where: { number },
    select: {
      id: true,
      lotId: true,
      correctedBy: { select: { id: true } },
      lot: { select: { accession: { select: { lots: { select: { id: true } } } } } },
    },
  });
  if (!test || test.correctedBy) return null;
  const { rows } = connections();
  const lots = loadLots(
    rows,
    test.lot.accession.lots.map(({ id }) => id),
  );
  const [crop] = loadCropJudging(rows, [lots[0]?.cropId ?? '']).values();
  if (!crop) return null;
  const climates = storeClimates(rows);
  const without = lots.map((lot) => ({ ...lot, tests: lot.tests.filter(({ id }) => id !== test.id) }));
  const [now, before] = [lots, without].map((some) =>
    evaluateAccession(some, crop, climates, today()).find(({ lot }) => lot.id === test.lotId),
  );
  if (!now || !before) return null;
  return compare(now, before, { id: test.id, crop, climates });
}

function compare(
  now: EvaluatedLot,
  before: EvaluatedLot,
  { id, crop, climates }: { id: string; crop: CropJudging; climates: StoreClimates },
): WhatWasLearnt {
  const forecasts = [before, now].map((one) => lotForecast(one, crop, climates, {}, today()));
  const [forecastBefore, forecastNow] = forecasts;
  const believedBefore = forecastBefore && beliefOf(before, forecastBefore, forecasts);
  const believedNow = forecastNow && beliefOf(now, forecastNow, forecasts);
  if (!forecastNow || !believedBefore || !believedNow) {
    const { forecastRefusal } = now.judgement;
    return { ok: false, reason: forecastRefusal ?? before.judgement.forecastRefusal ?? 'the lot has no forecast' };
  }
  const number = now.tests.find((test) => test.id === id)?.number;
  return {
    ok: true,
    lotNumber: now.lot.number,
    before: believedBefore,
    now: believedNow,
    tests: forecastNow.tests.map((test) => ({ ...test, isThis: test.number === number })),
    isNewest: now.tests.at(-1)?.id === id,
    todayDay: forecastNow.todayDay,
  };
}

function beliefOf(
  { posterior, judgement, seedsLeft, tests }: EvaluatedLot,
  forecast: LotForecast,
  all: readonly (LotForecast | null)[],
): Belief | null {
  const { viabilityNow: viability, threshold, chanceBelowNow: chanceBelow, lastSafeSeason, testDue } = judgement;
  if (!posterior || !viability || threshold === null || chanceBelow === null) return null;
  // Both curves over the same days, so that one picture and one table hold them.
  const days = all.flatMap((one) => one?.curve.map(({ day }) => day) ?? []);
  const span = { fromDay: Math.min(...days), toDay: Math.max(...days) };
  const { probitsAt } = forecast.ageing;
  const listed = new Set([...yearlyDays(span.fromDay, span.toDay, YEARS_LISTED), forecast.todayDay]);
  const curve = forecastCurve({ posterior, probitsAt, ...span, extraDays: [...days, ...listed] });
  return {
    viability,
    threshold,
    chanceBelow,
    nextTestOn: isWorthTesting({ seedsLeft, everTested: tests.length > 0, chanceBelow }) ? testDue.dueOn : null,
    lastSafeSeason,
    lastSafeDay: forecast.lastSafeSeason?.day ?? null,
    curve,
    table: curve.filter(({ day }) => listed.has(day)),
  };
}
