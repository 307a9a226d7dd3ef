/*
 * How alike the seeds of one dish are taken to be when a lot is judged. Four dishes tell little of it, so that dishes are
 * taken for simple random samples until they clearly are not.
 */
import { replicateHeterogeneity } from './heterogeneity';

/** A dish: seeds set, and those of them that count (normal, or alive). */
export interface Dish {
  /** count, integer, >= 1 */
  seeds: number;
  /** count, integer, 0 <= counted <= seeds */
  counted: number;
}

/** Dishes that differ more than chance allows 1 in 100 times are no simple random samples. Our own choice. */
const UNEVEN_P_VALUE = 0.01;
/** Beyond this a test says next to nothing; it should be repeated, not weighed. Our own choice. */
const MOST_UNEVEN = 0.5;

/**
 * The intra-replicate correlation that a lot's tests are weighed with.
 *
 * @param tests  the dishes of each of the lot's tests
 * @returns rho, 0-0.5: 0 while the dishes of every test agree; else the largest estimate of the tests whose dishes do not,
 *          which then holds for all of them, so that the band is honest rather than narrow
 * @see docs/methods/lot-model.md; what the rule costs and gains: docs/methods/calibration.md
 * Checked in tests/domain/germination/assumed-correlation.test.ts
 */
export function assumedCorrelation(tests: readonly (readonly Dish[])[]): number {
  return tests.reduce((most, dishes) => {
    const found = replicateHeterogeneity(dishes.map(({ seeds, counted }) => ({ seeds, normal: counted })));
    if (!found || found.pValue >= UNEVEN_P_VALUE) return most;
    return Math.max(most, Math.min(found.intraReplicateCorrelation, MOST_UNEVEN));
  }, 0);
}
