/**
 * A posterior as a weighted list of possible lots, for sums that the other functions do not give: the expected number
 * of seedlings from a sowing, the chance that at least so many emerge.
 */
import type { LotPosterior } from './lot-model';
import {
  KNOT_LENGTH,
  LEFT_SPACING,
  MASS_AFTER,
  MASS_BEFORE,
  MODE,
  RATE,
  RIGHT_SPACING,
  SCALE,
  TABLE_AT,
} from './posterior-knot';

/** One possible lot: viability after D is Phi(initial - rate x D); weight is its probability. */
export type QuadratureNode = { initial: number; rate: number; weight: number };

const LEAST_WEIGHT = 1e-7; // lighter nodes are dropped: all of them together weigh less than 0.0002

/**
 * Nodes and weights over initial viability and relative rate.
 *
 * @param posterior  from `fitLot`
 * @returns some hundreds of nodes, at most a few thousand under a very wide prior; weights > 0 and adding to 1
 * Checked against `probabilityBelow` and the band's median: tests/domain/longevity/sample-quadrature.test.ts
 */
export function sampleQuadrature(posterior: LotPosterior): QuadratureNode[] {
  const { numbers, knotsAt, sideIntervals } = posterior;
  const points = 2 * sideIntervals + 1;
  const nodes: QuadratureNode[] = [];
  let total = 0;
  for (let knot = knotsAt; knot < numbers.length; knot += KNOT_LENGTH) {
    const mass = (numbers[knot + MASS_BEFORE] as number) + (numbers[knot + MASS_AFTER] as number);
    if (mass < LEAST_WEIGHT) continue;
    const at = numbers[knot + TABLE_AT] as number;
    const left = numbers[knot + LEFT_SPACING] as number;
    const right = numbers[knot + RIGHT_SPACING] as number;
    for (let j = 0; j < points; j += 1) {
      // The plain trapezoid rule: on a smooth hump that ends in next to nothing no rule does better.
      const breadth = j < sideIntervals ? left : j > sideIntervals ? right : 0.5 * (left + right);
      const weight = mass * (numbers[at + 3 * j + 1] as number) * breadth;
      if (weight < LEAST_WEIGHT) continue;
      const offset = (j - sideIntervals) * (j < sideIntervals ? left : right);
      const initial = (numbers[knot + MODE] as number) + offset * (numbers[knot + SCALE] as number);
      nodes.push({ initial, rate: numbers[knot + RATE] as number, weight });
      total += weight;
    }
  }
  for (const node of nodes) node.weight /= total;
  return nodes;
}
