import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { compareTwoResults } from '@/lib/domain/germination/two-results';
import { fitLot, type LotPosterior } from '@/lib/domain/longevity/lot-model';
import type { PacketAgeing } from '@/lib/domain/longevity/packet-ageing';
import { type ChosenPrior, chooseLotPrior } from '@/lib/domain/longevity/priors';
import { judgeLot } from '@/lib/domain/regrow/judge-lot';
import type { LotJudgement, LotToJudge } from '@/lib/domain/regrow/lot-judgement';
import type { ThresholdRule } from '@/lib/domain/regrow/threshold';
import type { StoragePeriod } from '@/lib/domain/stock/storage-history';
import { ageTests, type EvaluatedTest, staysUntil, testsForModel } from './age-tests';
import type { CropJudging } from './load-crop-judging';
import type { LotRecord, PacketRecord } from './load-lots';
import type { StoreClimates } from './store-climates';

export interface EvaluatedLot {
  lot: LotRecord;
  seedsLeft: number;
  /** the packet with most seed: where it lies is where the lot is judged to lie */
  mainPacket: PacketRecord | null;
  periods: StoragePeriod[];
  ageing: PacketAgeing | null;
  prior: ChosenPrior | null;
  posterior: LotPosterior | null;
  tests: EvaluatedTest[];
  judgement: LotJudgement;
}

/** What the accession's other lots mean for this one. */
export interface LotCompany {
  /** no other lot of its accession has seed */
  isOnlyLot: boolean;
}

/** Ageing predicted between two tests that still counts as none, probits: about one point at 90 %. */
const NO_AGEING_PROBITS = 0.05;
/** Two tests further apart than chance allows 1 in 100 times contradict one another. */
const CONTRADICTION_P_VALUE = 0.01;

/**
 * Everything that is computed of a lot, from its records: the one path that lists, pages and benchmarks take.
 *
 * The lot is judged by the packet with most seed; a test is placed in the history of the packet it came from.
 */
export function evaluateLot(
  lot: LotRecord,
  crop: CropJudging,
  climates: StoreClimates,
  company: LotCompany,
  today: string,
): EvaluatedLot {
  const seedsLeft = lot.packets.reduce((sum, packet) => sum + packet.seeds, 0);
  const { mainPacket, ageing, tests } = ageTests(lot, crop, climates, today);
  const prior = ageing?.ok ? priorOf(crop, ageing) : null;
  const posterior = prior ? posteriorOf(tests, prior) : null;
  const judgement = judgeLot(toJudge({ lot, crop, company, today, seedsLeft, mainPacket, ageing, posterior, tests }));
  return {
    lot,
    seedsLeft,
    mainPacket,
    periods: mainPacket ? staysUntil(mainPacket, climates, today) : [],
    ageing,
    prior,
    posterior,
    tests,
    judgement,
  };
}

function priorOf(crop: CropJudging, ageing: Extract<PacketAgeing, { ok: true }>): ChosenPrior {
  return chooseLotPrior({
    borrowed: crop.constantsBorrowed,
    outsideFittedRange: ageing.outsideFittedRange,
    moistureAssumed: ageing.moistureAssumed,
    cropOverride: crop.prior,
  });
}

/** What is believed of untested lots, by prior: a memo, since every one of them with the same prior has the same. */
const untested = new Map<string, LotPosterior>();
const MOST_PRIORS_KEPT = 200;

function posteriorOf(tests: EvaluatedTest[], { initial, logRate }: ChosenPrior): LotPosterior {
  const model = testsForModel(tests);
  const prior = { initial, logRate };
  if (model.tests.length > 0) return fitLot({ ...model, prior });
  const key = [initial.mean, initial.sd, logRate.mean, logRate.sd].join(' ');
  let posterior = untested.get(key);
  if (!posterior) {
    posterior = fitLot({ tests: [], prior });
    if (untested.size >= MOST_PRIORS_KEPT) untested.clear();
    untested.set(key, posterior);
  }
  return posterior;
}

interface JudgeParts {
  lot: LotRecord;
  crop: CropJudging;
  company: LotCompany;
  today: string;
  seedsLeft: number;
  mainPacket: PacketRecord | null;
  ageing: PacketAgeing | null;
  posterior: LotPosterior | null;
  tests: EvaluatedTest[];
}

function toJudge({
  lot,
  crop,
  company,
  today,
  seedsLeft,
  mainPacket,
  ageing,
  posterior,
  tests,
}: JudgeParts): LotToJudge {
  const refusal = forecastRefusal(crop, mainPacket, ageing);
  const last = tests.at(-1);
  const acquired = lot.accessionAcquiredOn;
  return {
    today,
    posterior: posterior as LotPosterior,
    probitsLostNow: ageing?.ok ? ageing.probitsAt(toEpochDay(today)) : 0,
    probitsPerDay: ageing?.ok ? ageing.ratePerDay : 0,
    forecastRefusal: refusal ? { reason: refusal } : undefined,
    thresholdRule: thresholdRuleOf(crop),
    seedsLeft,
    plantsNeeded: crop.plantsNeeded,
    emergence: crop.emergence,
    assurance: crop.assurance,
    sowingMonth: crop.sowingMonth,
    receivedOn: acquired && acquired > lot.harvestedOn && acquired <= today ? acquired : lot.harvestedOn,
    lastTestedOn: last ? last.finishedOn : null,
    probitsLostAtLastTest: last?.probitsLost ?? undefined,
    contradictoryTests: contradiction(tests),
    isOnlyLot: company.isOnlyLot,
    hasSafetyDuplicate: lot.packets.some((packet) => packet.role === 'safety-duplicate' && packet.seeds > 0),
  };
}

function thresholdRuleOf(crop: CropJudging): ThresholdRule {
  return crop.thresholdKind === 'absolute'
    ? { kind: 'absolute', germination: crop.thresholdValue }
    : { kind: 'fraction-of-initial', fraction: crop.thresholdValue };
}

/** Why there is no forecast, as the middle of a sentence; null when there is one. */
function forecastRefusal(
  crop: CropJudging,
  mainPacket: PacketRecord | null,
  ageing: PacketAgeing | null,
): string | null {
  if (!crop.seed) return 'no longevity constants are chosen for this crop';
  if (!mainPacket || !ageing) return 'it is not known where this seed has been';
  if (ageing.ok) return null;
  const reason = ageing.reason.replace(/\.$/, '');
  return reason.charAt(0).toLowerCase() + reason.slice(1);
}

/**
 * Two neighbouring tests that cannot both be right: they differ by more than chance allows though the seed hardly aged
 * between them, or the later one is better.
 */
function contradiction(tests: EvaluatedTest[]): readonly [number, number] | null {
  for (let index = tests.length - 1; index > 0; index -= 1) {
    const [earlier, later] = [tests[index - 1] as EvaluatedTest, tests[index] as EvaluatedTest];
    const rises = later.alive / later.sown > earlier.alive / earlier.sown;
    const aged = (later.probitsLost ?? 0) - (earlier.probitsLost ?? 0);
    if (!rises && aged > NO_AGEING_PROBITS) continue;
    if (areClose(earlier, later)) continue;
    const { compatible, pValue } = compareTwoResults(
      { germinated: earlier.alive, seeds: earlier.sown },
      { germinated: later.alive, seeds: later.sown },
    );
    if (!compatible && pValue < CONTRADICTION_P_VALUE) {
      return [earlier.alive / earlier.sown, later.alive / later.sown];
    }
  }
  return null;
}

/** So close that the exact test, which takes its time, could not call them contradictory: within 1.5 standard errors. */
function areClose(a: EvaluatedTest, b: EvaluatedTest): boolean {
  const pooled = (a.alive + b.alive) / (a.sown + b.sown);
  const variance = pooled * (1 - pooled) * (1 / a.sown + 1 / b.sown);
  return (a.alive / a.sown - b.alive / b.sown) ** 2 <= 1.5 ** 2 * variance;
}
