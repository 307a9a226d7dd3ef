import { TEST_LEVEL } from '@/app/(bank)/germination/_parts/result-words';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import { aliveInTray } from '@/lib/domain/germination/dormancy/alive-in-tray';
import { type BesideForecast, besideForecast } from '@/lib/domain/germination/dormancy/beside-forecast';
import { type DormantShare, dormantShare } from '@/lib/domain/germination/dormancy/dormant-share';
import type { AliveWithSideSamples } from '@/lib/domain/germination/dormancy/side-samples';
import { type ViabilityAdvice, viabilityAdvice } from '@/lib/domain/germination/dormancy/viability-advice';
import { recordedResult } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { CutTestResult, ViabilityTestResult } from '@/lib/domain/germination/dormancy/viability-test';
import type { ViabilityTestDetail } from '@/lib/server/queries/viability-test-detail';

/** A test that old says nothing against a forecast for today: the seed has aged since. */
const FRESH_DAYS = 180;

/** What a tray's seed says together: seedlings, and what was left over and examined. */
export interface TrayTogether {
  /** of which the examined seed is a part; corrections of it stand for it */
  testNumber: string;
  seeds: number;
  normal: number;
  /** seeds that count as hard or fresh in it */
  hardOrFresh: number;
  looked: number;
  alive: number;
  /** numbers of the viability tests that were put together */
  of: string[];
  result: Extract<AliveWithSideSamples, { ok: true }>;
}

export interface Findings {
  result: ViabilityTestResult | CutTestResult;
  /** null for seed from a packet; a word why there is none yet for a tray that is not closed, or no longer fits */
  together: TrayTogether | 'not-closed' | 'does-not-fit' | null;
  dormant: DormantShare | null;
  /** null without a forecast, and for seed of a tray that says nothing of the lot yet */
  forecast: BesideForecast | null;
  /** the test is too old to be held against a forecast of today */
  old: boolean;
  advice: ViabilityAdvice[];
}

/** Everything that a viability test's page says, from what was recorded. */
export function readFindings(test: ViabilityTestDetail, today: string): Findings {
  const { kind, tray, germination, lot } = test;
  const result = recordedResult(kind, test.counts, TEST_LEVEL);
  const together = tray && putTogether(test, tray);
  const dormant =
    tray || !germination
      ? null
      : dormantShare({
          viability: { alive: result.alive, seeds: result.seeds },
          germination: { germinated: germination.normal, seeds: germination.seeds },
          level: TEST_LEVEL,
        });
  const old = daysBetween(test.testedOn, today) > FRESH_DAYS;
  const interval = tray
    ? typeof together === 'object' && together
      ? together.result
      : null
    : result.estimate.interval;
  const forecast =
    old || !lot.forecast || !interval ? null : besideForecast({ shows: result.shows, interval }, lot.forecast);
  return {
    ...{ result, together, dormant, forecast, old },
    advice: test.correctedByNumber
      ? []
      : viabilityAdvice({
          ...{ kind, seeds: result.seeds, alive: result.alive, forecast, dormant: dormant?.verdict ?? null },
          worthless: 'worthless' in result ? result.worthless.proportion : 0,
          tray: tray && {
            number: tray.testNumber ?? tray.number,
            closed: tray.testNumber !== null,
            hardOrFresh: tray.hardOrFresh,
          },
        }),
  };
}

function putTogether(
  { kind }: ViabilityTestDetail,
  tray: NonNullable<ViabilityTestDetail['tray']>,
): Findings['together'] {
  if (tray.testNumber === null) return 'not-closed';
  const tests = tray.examined.filter((test) => test.kind === kind);
  const looked = tests.reduce((sum, test) => sum + test.seeds, 0);
  const alive = tests.reduce((sum, test) => sum + test.alive, 0);
  const { seeds, normal, abnormal, hardOrFresh } = tray;
  // A germination test that was corrected since may have more seedlings than its left-over seed leaves room for.
  if (normal + abnormal + Math.max(hardOrFresh, looked) > seeds) return 'does-not-fit';
  const result = aliveInTray({ seeds, normal, abnormal, hardOrFresh, looked, alive, level: TEST_LEVEL });
  if (!result.ok) return 'does-not-fit';
  return {
    ...{ testNumber: tray.testNumber, seeds, normal, hardOrFresh, looked, alive, result },
    of: tests.map(({ number }) => number),
  };
}
