/**
 * How many parents a seed lot really has. Forty plants of which three gave most of the seed pass on hardly more variety than
 * those three would.
 */

export interface Parent {
  /** its share of the seed, as seed parent: any unit (seeds, grams), >= 0 */
  seed: number;
  /** its share of the pollen, in any unit, >= 0; a selfing plant pollinates its own seed */
  pollen: number;
}

/**
 * Effective number of parents of a seed lot: 1 / sum of c^2, with c a parent's share of the lot's gametes, half as seed
 * parent, half as pollen parent. The chance that two gametes drawn from the lot come from one plant is then as among that many
 * plants that share alike; each generation loses 1 / (2 Ne) of the variety.
 *
 * With plants of two sexes that share alike within each it is 4 Nm Nf / (Nm + Nf); with N plants that all share alike it is N.
 *
 * @param parents  at least one with seed and one with pollen
 * @returns plants, >= 1 (1 for a single plant that pollinated itself), at most the number of parents
 * @throws RangeError when a share is negative or not finite, or nobody gave seed or pollen
 * @see standard population genetics (from memory); the formula for two sexes: Wright 1931, Genetics 16:97-159 (from memory)
 * Checked against R's simulated loss of variety and the formula for two sexes:
 * tests/domain/regrow/diversity/effective-size.test.ts
 */
export function effectiveParents(parents: readonly Parent[]): number {
  for (const { seed, pollen } of parents) {
    if (!(seed >= 0 && pollen >= 0 && Number.isFinite(seed) && Number.isFinite(pollen))) {
      throw new RangeError(`effectiveParents: shares must be finite and at least 0, got ${seed} and ${pollen}`);
    }
  }
  const allSeed = parents.reduce((sum, { seed }) => sum + seed, 0);
  const allPollen = parents.reduce((sum, { pollen }) => sum + pollen, 0);
  if (!(allSeed > 0 && allPollen > 0)) {
    throw new RangeError(`effectiveParents: somebody must give seed and pollen, got ${allSeed} and ${allPollen}`);
  }
  const squares = parents.reduce((sum, { seed, pollen }) => sum + ((seed / allSeed + pollen / allPollen) / 2) ** 2, 0);
  return 1 / squares;
}

/**
 * How the pollen of a crop's plants is shared when only the seed of each was weighed: all plants that flowered shed alike
 * (free crossing), or each pollinated its own seed (selfing).
 *
 * @param seedByPlant    seed taken from each plant, any unit, >= 0
 * @param pollination    'crossing' or 'selfing'
 * @param pollenPlants   plants that flowered without giving seed (crossing only), integer >= 0; default 0
 * @returns parents for `effectiveParents`
 * @throws RangeError when pollenPlants is not an integer >= 0
 * Checked in tests/domain/regrow/diversity/effective-size.test.ts
 */
export function parentsBySeed({
  seedByPlant,
  pollination,
  pollenPlants = 0,
}: {
  seedByPlant: readonly number[];
  pollination: 'crossing' | 'selfing';
  pollenPlants?: number;
}): Parent[] {
  if (!(Number.isInteger(pollenPlants) && pollenPlants >= 0)) {
    throw new RangeError(`parentsBySeed: pollenPlants must be an integer >= 0, got ${pollenPlants}`);
  }
  if (pollination === 'selfing') return seedByPlant.map((seed) => ({ seed, pollen: seed }));
  const others = Array.from({ length: pollenPlants }, () => ({ seed: 0, pollen: 1 }));
  return [...seedByPlant.map((seed) => ({ seed, pollen: 1 })), ...others];
}
