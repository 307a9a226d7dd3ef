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
} from './rate-cells';

/** One possible lot: viability after D is Phi(initial - rate x D); weight is its probability. */
export type QuadratureNode = { initial: number; rate: number; weight: number };

const LEAST_WEIGHT = 1e-7; // lighter nodes are dropped: all of them together weigh less than 0.0002

/**
 * Nodes and weights over initial viability and relative rate.
 *
 * @param posterior  from `fitLot`
 * @returns some hundreds of nodes; weights > 0 and adding to 1
 * Checked against `probabilityBelow` and the band's median: tests/domain/longevity/sample-quadrature.test.ts
 */
export function sampleQuadrature(posterior: LotPosterior): QuadratureNode[] {
  const { cells, tables, sideIntervals } = posterior;
  const points = 2 * sideIntervals + 1;
  const nodes: QuadratureNode[] = [];
  let total = 0;
  for (let knot = 0; knot < cells.length; knot += KNOT_LENGTH) {
    const mass = (cells[knot + MASS_BEFORE] as number) + (cells[knot + MASS_AFTER] as number);
    if (mass < LEAST_WEIGHT) continue;
    const at = (cells[knot + TABLE_AT] as number) + points;
    for (let j = 0; j + 1 < points; j += 2) {
      // Two intervals of K make a node, in their middle.
      const weight = mass * ((tables[at + j + 2] as number) - (tables[at + j] as number));
      if (weight < LEAST_WEIGHT) continue;
      const spacing = cells[knot + (j < sideIntervals ? LEFT_SPACING : RIGHT_SPACING)] as number;
      const initial =
        (cells[knot + MODE] as number) + (j + 1 - sideIntervals) * spacing * (cells[knot + SCALE] as number);
      nodes.push({ initial, rate: cells[knot + RATE] as number, weight });
      total += weight;
    }
  }
  for (const node of nodes) node.weight /= total;
  return nodes;
}
