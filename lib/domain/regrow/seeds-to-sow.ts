/**
 * How many seeds to sow so that the plants wanted come up with the assurance wanted. Sowing plants / chance would fail
 * half of the time: the extra seeds pay for chance, and, when viability is uncertain, for not knowing it.
 */
import type { LotPosterior } from '../longevity/lot-model';
import { fewestSeeds } from './fewest-seeds';
import { chanceOfAtLeast } from './raising-chance';
import { seedsForAssurance } from './seeds-for-assurance';

/** Wanted by default: 19 sowings in 20 raise the plants. Common practice. */
export const STANDARD_ASSURANCE = 0.95;

/** Where whole numbers of seeds stop being exact in a double's fraction; only a hopeless chance per seed comes near. */
const LARGEST_COUNT = 1e12;
/** Failures counted off one by one; beyond, a search is quicker. */
const MOST_COUNTED = 2000;
/** exp(-700) is about the smallest number that a double still holds. */
const LEAST_EXPONENT = -690;
/** A chance this close to the assurance is a tie (such as 3/4 exactly), which rounding must not decide: it is enough. */
const TIE = 1e-12;

/**
 * Fewest seeds to sow when the chance per seed is known: least n with P(Bin(n, chancePerSeed) >= plants) >= assurance.
 *
 * @param plants         plants wanted, integer >= 1
 * @param chancePerSeed  chance that one seed becomes a plant (viability times emergence), in (0, 1]
 * @param assurance      probability of raising at least that many, in (0, 1); default 0.95: write 0.95, not 95
 * @returns integer >= plants, correct to the last seed for up to 5000 plants and chances down to 1e-4; Infinity beyond
 *          1e12 seeds
 * @throws RangeError when an argument is outside its range
 * @see the negative binomial: the seed on which the last plant comes up
 * Checked against R `qnbinom` and `pbinom`: tests/golden/seeds-to-sow.json
 */
export function seedsToSow({
  plants,
  chancePerSeed,
  assurance = STANDARD_ASSURANCE,
}: {
  plants: number;
  chancePerSeed: number;
  assurance?: number;
}): number {
  requirePlants('seedsToSow', plants);
  requireChance('seedsToSow', 'chancePerSeed', chancePerSeed);
  requireAssurance('seedsToSow', assurance);
  if (chancePerSeed === 1) return plants;
  const counted = countOff(plants, chancePerSeed, assurance);
  if (counted !== null) return counted;
  // Two standard deviations more than the average need; the search corrects it.
  const startAt = (plants + 2 * Math.sqrt(plants * (1 - chancePerSeed))) / chancePerSeed;
  const chanceWith = (seeds: number) => chanceOfAtLeast(plants, seeds, chancePerSeed);
  return fewestSeeds(plants, assurance, chanceWith, startAt, LARGEST_COUNT);
}

/**
 * Goes through the seeds that may fail before the last plant comes up, one after the other, adding up their chances (the negative
 * binomial) until they reach the assurance. Null where that would take long or the first chance is too small for a double.
 */
function countOff(plants: number, chancePerSeed: number, assurance: number): number | null {
  const first = plants * Math.log(chancePerSeed);
  const dead = 1 - chancePerSeed;
  if (first < LEAST_EXPONENT || plants * dead > 0.5 * MOST_COUNTED * chancePerSeed) return null;
  let term = Math.exp(first);
  let sum = term;
  for (let failed = 0; failed < MOST_COUNTED; failed += 1) {
    if (sum >= assurance - TIE) return plants + failed;
    term *= (dead * (plants + failed)) / (failed + 1);
    sum += term;
  }
  return null;
}

/**
 * Fewest seeds to sow from a lot whose viability is uncertain: least n for which the chance of raising the plants,
 * averaged over everything that the lot's viability may be, reaches the assurance.
 *
 * @param plants       plants wanted, integer >= 1
 * @param posterior    of the lot, from fitLot
 * @param probitsLost  ageing of the lot at sowing, probits of the published equation, >= 0
 * @param emergence    chance that a living seed becomes a plant in the field, in (0, 1]
 * @param assurance    in (0, 1); default 0.95
 * @returns integer >= plants. Infinity when no number up to ten million seeds reaches the assurance: the lot is more
 *          likely dead than the assurance allows, and more seed does not help
 * @throws RangeError when an argument is outside its range
 * Checked against dense integration of the posterior, where it differs by less than 1 % or one seed:
 * tests/domain/regrow/seeds-to-sow-uncertain.test.ts
 */
export function seedsToSowUncertain({
  plants,
  posterior,
  probitsLost,
  emergence,
  assurance = STANDARD_ASSURANCE,
}: {
  plants: number;
  posterior: LotPosterior;
  probitsLost: number;
  emergence: number;
  assurance?: number;
}): number {
  requirePlants('seedsToSowUncertain', plants);
  requireChance('seedsToSowUncertain', 'emergence', emergence);
  requireAssurance('seedsToSowUncertain', assurance);
  if (!(probitsLost >= 0 && Number.isFinite(probitsLost))) {
    throw new RangeError(`seedsToSowUncertain: probitsLost must be a finite number >= 0, got ${probitsLost}`);
  }
  return seedsForAssurance({ posterior, probitsLost, emergence }, plants, assurance);
}

function requirePlants(caller: string, plants: number): void {
  if (!Number.isInteger(plants) || plants < 1) {
    throw new RangeError(`${caller}: plants must be an integer >= 1, got ${plants}`);
  }
}

function requireChance(caller: string, name: string, chance: number): void {
  if (!(chance > 0 && chance <= 1)) throw new RangeError(`${caller}: ${name} must be in (0, 1], got ${chance}`);
}

function requireAssurance(caller: string, assurance: number): void {
  if (!(assurance > 0 && assurance < 1)) {
    throw new RangeError(`${caller}: assurance must be in (0, 1), got ${assurance}`);
  }
}
