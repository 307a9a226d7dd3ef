/*
 * What a tetrazolium or cut test leads to. Such a test never changes the forecast by itself (decision 028), so what it
 * finds has to lead to something else: a germination test, another class in one, or a cleaning.
 */
import type { BesideForecast } from './beside-forecast';
import type { DormantShare } from './dormant-share';

export type ViabilityAdviceReason =
  | 'look-again'
  | 'class-again'
  | 'class-at-final-count'
  | 'dormant'
  | 'less-than-forecast'
  | 'more-than-forecast'
  | 'clean'
  | 'few-seeds';

export interface ViabilityAdvice {
  reason: ViabilityAdviceReason;
  /** one or two plain sentences */
  sentence: string;
}

export interface ViabilityFindings {
  kind: 'tetrazolium' | 'cut';
  /** seeds stained or cut */
  seeds: number;
  /** of these stained as they should be, or firm */
  alive: number;
  /** share of them empty or eaten, 0-1; 0 for tetrazolium */
  worthless: number;
  /** beside the lot's forecast; null without one */
  forecast: BesideForecast | null;
  /** beside the lot's germination test of about the same time; null without one, and for seed left in a tray */
  dormant: DormantShare['verdict'] | null;
  /** the germination test whose seed left over was examined; null for seed from a packet */
  tray: { number: string; closed: boolean; hardOrFresh: number } | null;
}

/** Fewer seeds than this leave an interval of 25 points and more at middling viability: our own choice. */
const FEW_SEEDS = 50;
/** Share of empty and eaten seed from which winnowing is worth while: our own choice. */
const MUCH_WORTHLESS = 0.1;

/**
 * What to do after a viability test.
 *
 * @param findings  see ViabilityFindings
 * @returns the reasons that hold, the most pressing first; empty when nothing follows from the test
 * Checked in tests/domain/germination/dormancy/viability-advice.test.ts
 */
export function viabilityAdvice(findings: ViabilityFindings): ViabilityAdvice[] {
  const { kind, seeds, alive, worthless, forecast, dormant, tray } = findings;
  const advice: ViabilityAdvice[] = [];
  if (dormant === 'contradiction') {
    advice.push({
      reason: 'look-again',
      sentence:
        kind === 'tetrazolium'
          ? 'Stain other seed of the lot: fewer stained than germinate, which cannot be. Weak or old solution, too short or too cold a stain, or seed not opened far enough are the usual causes (common practice).'
          : 'Cut other seed of the lot: fewer were firm than germinate, which cannot be.',
    });
  }
  if (tray) advice.push(...classesOf(tray, seeds, alive, kind));
  if (dormant === 'shown' && kind === 'tetrazolium') {
    advice.push({
      reason: 'dormant',
      sentence:
        'More is alive than germinates. Break the dormancy as the method says, and test germination again; if many seedlings were abnormal, that is the difference instead.',
    });
  }
  // The germination test of a tray is in the forecast already.
  if (forecast === 'below' && !tray) {
    advice.push({
      reason: 'less-than-forecast',
      sentence:
        'Less is alive than the forecast says. Test germination now: only that changes the forecast, and the lot may be nearer its line than it seems.',
    });
  }
  if (forecast === 'above' && !tray) {
    advice.push({
      reason: 'more-than-forecast',
      sentence:
        'More is alive than the forecast says. A germination test whose dormancy was broken would show it, and raise the forecast.',
    });
  }
  if (worthless >= MUCH_WORTHLESS) {
    advice.push({
      reason: 'clean',
      sentence:
        'Much seed is empty or eaten. Winnow or float it out of the rest, look for live insects, and count anew what the packets hold.',
    });
  }
  if (!tray && seeds < FEW_SEEDS) {
    advice.push({
      reason: 'few-seeds',
      sentence: `With ${seeds} ${seeds === 1 ? 'seed' : 'seeds'} the truth may lie far off. Examine ${FEW_SEEDS} or more when the lot can spare them.`,
    });
  }
  return advice;
}

/** Seed classed hard or fresh counts as alive in the forecast: what was found dead has to be classed so. */
function classesOf(
  { number, closed, hardOrFresh }: NonNullable<ViabilityFindings['tray']>,
  seeds: number,
  alive: number,
  kind: ViabilityFindings['kind'],
): ViabilityAdvice[] {
  if (!closed) {
    return [
      {
        reason: 'class-at-final-count',
        sentence: `Class them at the final count of ${number}: what ${kind === 'tetrazolium' ? 'stained as it should' : 'was firm'} as hard or fresh, the others as dead.`,
      },
    ];
  }
  // More looked at than were classed hard or fresh: the look decided the classes already.
  const dead = Math.min(seeds, hardOrFresh) - alive;
  if (seeds > hardOrFresh || dead <= 0) return [];
  return [
    {
      reason: 'class-again',
      sentence: `${number} counts all its ${hardOrFresh} hard and fresh seeds as alive, and ${dead} of the ${seeds} looked at ${dead === 1 ? 'was' : 'were'} not. Correct the test so that ${dead === 1 ? 'it counts' : 'they count'} as dead: the forecast then follows.`,
    },
  ];
}
