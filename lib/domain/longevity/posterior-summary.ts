/** What is known of a lot in a few figures: how alive it was at the start, and how fast it ages. */
import { type LotPosterior, viabilityAt } from './lot-model';
import { KNOT_LENGTH, QUARTER_MASS, QUARTER_TILT, RATE } from './posterior-knot';

export type MedianAndBand = { median: number; lower: number; upper: number };

/**
 * The lot's viability before any ageing.
 *
 * @param posterior  from `fitLot`
 * @param level      probability inside the band, 0 < level < 1; default 0.9
 * @returns proportions, lower <= median <= upper
 * @throws RangeError when level is outside (0, 1)
 * Checked in tests/domain/longevity/posterior-summary.test.ts
 */
export function initialViability(posterior: LotPosterior, { level = 0.9 }: { level?: number } = {}): MedianAndBand {
  return viabilityAt(posterior, { probitsLost: 0, level });
}

/**
 * The lot's initial viability and its rate of ageing relative to the published one.
 *
 * @param posterior  from `fitLot`
 * @param level      probability inside each band, 0 < level < 1; default 0.9
 * @returns initial viability (proportions) and relative rate (1 is the published rate; 2 ages twice as fast), each with
 *          its median and band, and the level
 * @throws RangeError when level is outside (0, 1)
 * Checked against the prior's own quantiles and the dense grid: tests/domain/longevity/posterior-summary.test.ts
 */
export function posteriorSummary(
  posterior: LotPosterior,
  { level = 0.9 }: { level?: number } = {},
): { initialViability: MedianAndBand; relativeRate: MedianAndBand; level: number } {
  return {
    initialViability: initialViability(posterior, { level }),
    relativeRate: {
      median: rateQuantile(posterior, 0.5),
      lower: rateQuantile(posterior, 0.5 * (1 - level)),
      upper: rateQuantile(posterior, 0.5 * (1 + level)),
    },
    level,
  };
}

function rateQuantile({ numbers, knotsAt }: LotPosterior, chance: number): number {
  let below = 0;
  for (let middle = knotsAt + KNOT_LENGTH; middle < numbers.length; middle += 2 * KNOT_LENGTH) {
    const from = numbers[middle - KNOT_LENGTH + RATE] as number;
    const to = numbers[middle + KNOT_LENGTH + RATE] as number;
    for (let quarter = 0; quarter < 4; quarter += 1) {
      const mass = numbers[middle + QUARTER_MASS + quarter] as number;
      if (below + mass >= chance) {
        const tilt = numbers[middle + QUARTER_TILT + quarter] as number;
        return from * (to / from) ** ((quarter + shareReached((chance - below) / mass, tilt)) / 4);
      }
      below += mass;
    }
  }
  return numbers[numbers.length - KNOT_LENGTH + RATE] as number;
}

/** How far along a quarter with a tilted density this share of its probability is reached, 0 to 1. */
function shareReached(share: number, tilt: number): number {
  // (1 - tilt) t + tilt t^2 = share, in the form that does not cancel when the tilt is nothing.
  const even = 1 - tilt;
  return (2 * share) / (even + Math.sqrt(even * even + 4 * tilt * share));
}
