/**
 * The demo's only source of chance. One seed for the whole program; every thing that draws has a stream of its own,
 * named for it, so that a lot added to the scenario changes no other lot.
 */
import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

const DEMO_SEED = 20_110_401;

export interface Random {
  /** in [0, 1) */
  fraction(): number;
  /** in [from, to) */
  between(from: number, to: number): number;
  /** integer in [from, to] */
  wholeBetween(from: number, to: number): number;
  /** standard normal */
  normal(): number;
  /** successes among `trials` independent draws of this chance */
  binomial(trials: number, chance: number): number;
  /** one of a list that is not empty */
  pick<Item>(items: readonly Item[]): Item;
}

/**
 * A stream of chance.
 *
 * @param name  what it is for, such as 'lot Sandwater Flat 12'; the same name gives the same stream
 * Checked in tests/seed-demo/random.test.ts
 */
export function randomFor(name: string): Random {
  const generator = xoroshiro128plus(DEMO_SEED ^ hashOf(name));
  const fraction = () => uniformFloat64(generator);
  return {
    fraction,
    between: (from, to) => from + (to - from) * fraction(),
    wholeBetween: (from, to) => uniformInt(generator, from, to),
    // Box and Muller; 1 - u because the logarithm of 0 has no value.
    normal: () => Math.sqrt(-2 * Math.log(1 - fraction())) * Math.cos(2 * Math.PI * fraction()),
    binomial: (trials, chance) => {
      let successes = 0;
      for (let i = 0; i < trials; i += 1) if (fraction() < chance) successes += 1;
      return successes;
    },
    pick: (items) => items[uniformInt(generator, 0, items.length - 1)] as (typeof items)[number],
  };
}

/** FNV-1a, 32 bits: spreads names that differ in one letter. */
function hashOf(text: string): number {
  let hash = 0x811c9dc5;
  for (let i = 0; i < text.length; i += 1) hash = Math.imul(hash ^ text.charCodeAt(i), 0x01000193);
  return hash | 0;
}
