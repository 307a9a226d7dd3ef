/** The chance of raising plants from an uncertain lot by brute force: the exact binomial tail, averaged over 3000 viabilities. */
import { chanceBelowProbit } from '../../lib/domain/longevity/chance-below-probit';
import type { LotPosterior } from '../../lib/domain/longevity/lot-model';
import { chanceOfAtLeast } from '../../lib/domain/regrow/raising-chance';
import { normalCdf } from '../../lib/domain/statistics/normal-distribution';

/** What the chance per seed may be: weights that add to 1, and the chance (0-1) that goes with each. */
export interface ChanceDistribution {
  weights: number[];
  chances: number[];
}

/** 3000 equal bins of probit viability, from -9 to 6. */
export function denseChances(posterior: LotPosterior, probitsLost: number, emergence: number): ChanceDistribution {
  const weights: number[] = [];
  const chances: number[] = [];
  let below = 0;
  for (let bin = 1; bin <= 3000; bin++) {
    const end = -9 + bin / 200;
    const belowEnd = bin === 3000 ? 1 : chanceBelowProbit(posterior, probitsLost, end);
    if (belowEnd > below || bin === 3000) {
      weights.push(belowEnd - below);
      chances.push(emergence * normalCdf(end - 1 / 400));
      below = belowEnd;
    }
  }
  return { weights, chances };
}

export function denseChanceOfRaising(plants: number, seeds: number, { weights, chances }: ChanceDistribution): number {
  let chance = 0;
  weights.forEach((weight, index) => {
    if (weight > 0) chance += weight * chanceOfAtLeast(plants, seeds, chances[index] as number);
  });
  return Math.min(chance, 1);
}
