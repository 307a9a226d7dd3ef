/**
 * How sure a sowing is to raise the plants wanted when the chance per seed is known, as a probit: the normal approximation
 * to a binomial tail by Peizer & Pratt (1968), which unlike the plain one is good far out and for few seeds.
 */
import { normalQuantile } from '../statistics/normal-distribution';

const LEAST_CHANCE = 1e-300;
/** Nearer to 1 than this the quotient below loses its digits, and two terms of its series take over. */
const NEAR_ONE = 1e-3;

/** 2 (1 - x + x log x) / (1 - x)^2, for x > 0: one and Peizer & Pratt's g(x), without the loss of digits in that sum. */
function skewness(x: number): number {
  const away = 1 - x;
  if (Math.abs(away) < NEAR_ONE) return 1 + away / 3 + (away * away) / 6;
  return (2 * (away + x * Math.log(x))) / (away * away);
}

/**
 * The probit of P(Bin(seeds, chance) >= plants).
 *
 * @param plants     > 0
 * @param seeds      >= plants; need not be whole
 * @param chance     per seed, in (0, 1)
 * @param chanceNot  1 - chance, given by the caller, who may know more digits of it
 * @returns probits, finite; as a probability within 0.001 of the exact tail, and within 0.0002 where three seeds may fail
 * @see Peizer & Pratt (1968), J. Am. Stat. Assoc. 63:1416-1456, in the form of Johnson, Kotz & Kemp (from memory)
 * Checked against the exact tail: tests/domain/regrow/probit-of-raising.test.ts
 */
export function probitOfRaising(plants: number, seeds: number, chance: number, chanceNot: number): number {
  // The two ends, where the approximation is off by up to 0.004, have short exact answers.
  if (plants === 1) return -normalQuantile(Math.max(LEAST_CHANCE, Math.exp(seeds * Math.log(chanceNot))));
  if (seeds <= plants) return normalQuantile(Math.max(LEAST_CHANCE, Math.exp(plants * Math.log(chance))));
  // Failing means at most `most` = plants - 1 plants come up.
  const most = plants - 1;
  const rest = seeds - most;
  const gap =
    most +
    2 / 3 -
    (seeds + 1 / 3) * chance +
    0.02 * (chanceNot / (most + 1) - chance / rest + (chanceNot - 0.5) / (seeds + 1));
  const variance = (seeds + 1 / 6) * chance * chanceNot;
  const skew =
    chanceNot * skewness((most + 0.5) / (seeds * chance)) + chance * skewness((rest - 0.5) / (seeds * chanceNot));
  return -gap * Math.sqrt(skew / variance);
}
