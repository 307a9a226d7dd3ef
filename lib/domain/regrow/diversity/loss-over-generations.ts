/**
 * What many regrowings do: each is a draw, and what one loses no later one brings back. Two measures: the variety kept
 * (expected heterozygosity, relative to the first seed), and the chance that a rare allele is still there.
 */
import { binomialLogPmf } from '../../statistics/binomial';

/** Gametes up to which the chain below is run as it is; a table of their square is made. */
const MOST_GAMETES = 600;

/**
 * Share of the variety (expected heterozygosity) that is left after a row of regrowings: the product of 1 - 1/(2 Ne).
 *
 * @param effectiveSizes  effective number of parents at each regrowing, > 0.5; none gives 1
 * @returns share in [0, 1]
 * @throws RangeError when a size is not above one half
 * @see standard population genetics (from memory)
 * Checked against the exact chain of draws: tests/domain/regrow/diversity/loss-over-generations.test.ts
 */
export function varietyKept(effectiveSizes: readonly number[]): number {
  return effectiveSizes.reduce((kept, size) => {
    if (!(size > 0.5)) throw new RangeError(`varietyKept: effective sizes must be above 0.5, got ${size}`);
    return kept * (1 - 1 / (2 * size));
  }, 1);
}

/**
 * The steady size that would lose as much over as many regrowings: the harmonic mean, which the smallest rules.
 *
 * @param effectiveSizes  at least one, each > 0
 * @returns plants
 * @throws RangeError when there is none or one is not above 0
 * Checked in tests/domain/regrow/diversity/loss-over-generations.test.ts
 */
export function sizeOverGenerations(effectiveSizes: readonly number[]): number {
  if (effectiveSizes.length === 0) throw new RangeError('sizeOverGenerations: at least one size is needed, got none');
  const inverse = effectiveSizes.reduce((sum, size) => {
    if (!(size > 0)) throw new RangeError(`sizeOverGenerations: sizes must be above 0, got ${size}`);
    return sum + 1 / size;
  }, 0);
  return effectiveSizes.length / inverse;
}

/**
 * Chance that an allele is still there after each of a row of regrowings of one size: the chain of binomial draws of 2 Ne
 * gametes, each from what the last left (Wright and Fisher's model), run exactly.
 *
 * @param effectiveSize  parents at each regrowing; 2 Ne is rounded to whole gametes, at most 600 of them
 * @param frequency      of the allele in the first seed, in (0, 1)
 * @param generations    regrowings, integer from 1 to 100
 * @returns a chance for each generation, the first first; or that there are too many gametes, when it hardly gets lost
 * @throws RangeError when an argument is outside its range
 * @see Wright 1931, Genetics 16:97-159; Fisher 1930 (both from memory)
 * Checked against R's matrix powers: tests/golden/diversity.json
 */
export function chancesOfStaying({
  effectiveSize,
  frequency,
  generations,
}: {
  effectiveSize: number;
  frequency: number;
  generations: number;
}): { ok: true; chances: number[] } | { ok: false; reason: 'too-many-plants' } {
  const gametes = Math.round(2 * effectiveSize);
  if (!(gametes >= 1)) throw new RangeError(`chancesOfStaying: effectiveSize must be above 0.25, got ${effectiveSize}`);
  if (!(frequency > 0 && frequency < 1)) {
    throw new RangeError(`chancesOfStaying: frequency must be in (0, 1), got ${frequency}`);
  }
  if (!(Number.isInteger(generations) && generations >= 1 && generations <= 100)) {
    throw new RangeError(`chancesOfStaying: generations must be an integer from 1 to 100, got ${generations}`);
  }
  if (gametes > MOST_GAMETES) return { ok: false, reason: 'too-many-plants' };
  const draws = Array.from({ length: gametes + 1 }, (_, copies) => drawOf(gametes, copies / gametes));
  let copies = drawOf(gametes, frequency);
  const chances = [1 - (copies[0] as number)];
  for (let generation = 1; generation < generations; generation += 1) {
    const next = new Float64Array(gametes + 1);
    copies.forEach((weight, from) => {
      const draw = draws[from] as Float64Array;
      for (let to = 0; to <= gametes; to += 1) (next[to] as number) += weight * (draw[to] as number);
    });
    copies = next;
    chances.push(1 - (copies[0] as number));
  }
  return { ok: true, chances };
}

/** Chances of 0, 1, 2 ... copies among so many gametes. */
function drawOf(gametes: number, probability: number): Float64Array {
  return Float64Array.from({ length: gametes + 1 }, (_, successes) =>
    Math.exp(binomialLogPmf({ successes, trials: gametes, probability })),
  );
}
