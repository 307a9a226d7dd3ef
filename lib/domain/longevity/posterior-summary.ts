/** What is known of a lot in a few figures: how alive it was at the start, and how fast it ages. */
import { type LotPosterior, viabilityAt } from './lot-model';
import { KNOT_LENGTH, MASS_AFTER, MASS_BEFORE, RATE } from './rate-cells';

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

function rateQuantile({ cells }: LotPosterior, chance: number): number {
  let below = 0;
  for (let knot = 0; knot + KNOT_LENGTH < cells.length; knot += KNOT_LENGTH) {
    const rate = cells[knot + RATE] as number;
    const nextRate = cells[knot + KNOT_LENGTH + RATE] as number;
    const first = cells[knot + MASS_AFTER] as number;
    const second = cells[knot + KNOT_LENGTH + MASS_BEFORE] as number;
    if (below + first + second >= chance) {
      // Each half cell has its own evenly spread probability along the logarithm of the rate.
      const share =
        below + first >= chance ? (0.5 * (chance - below)) / first : 0.5 + (0.5 * (chance - below - first)) / second;
      return rate * (nextRate / rate) ** share;
    }
    below += first + second;
  }
  return cells[cells.length - KNOT_LENGTH + RATE] as number;
}
