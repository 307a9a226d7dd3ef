/**
 * Where seeds are too many to be counted off one by one: fewest seeds for which the chance of raising the plants reaches the
 * assurance. That chance grows with every seed, so the answer is bracketed and the bracket closed to one seed.
 */
/** Keeps the log-odds of a chance of 0 or 1 finite, so that the bracket can still be divided. */
const MAX_LOG_ODDS = 40;

/** A chance this close to the assurance is a tie (such as 3/4 exactly), which rounding must not decide: it is enough. */
const TIE = 1e-12;

/**
 * Fewest seeds n, plants <= n <= limit, with P(at least `plants` grow) >= assurance.
 *
 * @param plants        integer >= 1
 * @param assurance     in (0, 1)
 * @param chanceWith    the chance of raising the plants from a number of seeds, rising with it
 * @param startAt       a guess at the answer; a poor one costs time, not correctness
 * @param limit         largest number tried
 * @returns integer, or Infinity when even `limit` seeds do not reach the assurance
 * Checked through seedsToSow: tests/golden/seeds-to-sow.json
 */
export function fewestSeeds(
  plants: number,
  assurance: number,
  chanceWith: (seeds: number) => number,
  startAt: number,
  limit: number,
): number {
  if (plants > limit) return Number.POSITIVE_INFINITY;
  const wanted = logOdds(assurance);
  const isEnough = (chance: number) => chance >= assurance - TIE;

  // `tooFew` never reaches the assurance (fewer seeds than plants cannot); `enough` does, once it is known.
  let tooFew = plants - 1;
  let tooFewOdds = -MAX_LOG_ODDS - wanted;
  let enough = 0;
  let enoughOdds = 0;
  let guess = Math.min(Math.max(Math.ceil(startAt), plants), limit);
  for (let growth = 0.05; enough === 0; growth *= 2) {
    const chance = chanceWith(guess);
    if (isEnough(chance)) {
      enough = guess;
      enoughOdds = logOdds(chance) - wanted;
    } else {
      if (guess >= limit) return Number.POSITIVE_INFINITY;
      tooFew = guess;
      tooFewOdds = logOdds(chance) - wanted;
      guess = Math.min(limit, Math.ceil(guess * (1 + growth)) + 1);
    }
  }
  // From a start that was already enough, step down the same way until one is too few.
  for (let growth = 0.05; tooFew < plants && enough > plants; growth *= 2) {
    const below = Math.max(plants, Math.floor(enough / (1 + growth)) - 1);
    const chance = chanceWith(below);
    if (isEnough(chance)) {
      enough = below;
      enoughOdds = logOdds(chance) - wanted;
    } else {
      tooFew = below;
      tooFewOdds = logOdds(chance) - wanted;
    }
  }

  // Regula falsi on the log-odds, nearly straight in n; a side that stays twice is halved (Illinois) so that both close.
  let lastSide = 0;
  for (let round = 0; enough - tooFew > 1; round++) {
    const straight = tooFew + ((enough - tooFew) * -tooFewOdds) / (enoughOdds - tooFewOdds);
    // Every third round halves the bracket: a guarantee of finishing, whatever the shape.
    const middle = round % 3 === 2 ? (tooFew + enough) / 2 : straight;
    const seeds = Math.min(Math.max(Math.ceil(middle), tooFew + 1), enough - 1);
    const chance = chanceWith(seeds);
    if (isEnough(chance)) {
      enough = seeds;
      enoughOdds = logOdds(chance) - wanted;
      if (lastSide === 1) tooFewOdds /= 2;
      lastSide = 1;
    } else {
      tooFew = seeds;
      tooFewOdds = logOdds(chance) - wanted;
      if (lastSide === -1) enoughOdds /= 2;
      lastSide = -1;
    }
  }
  return enough;
}

function logOdds(chance: number): number {
  const odds = Math.log(chance / (1 - chance));
  return Math.min(Math.max(odds, -MAX_LOG_ODDS), MAX_LOG_ODDS);
}
