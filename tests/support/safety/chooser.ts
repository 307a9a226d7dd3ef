import type { Random } from '@/seed-demo/random';

/** How hands choose: from a stream of chance, or from a list of numbers that a property test can make smaller. */
export interface Chooser {
  /** integer in [from, to] */
  whole(from: number, to: number): number;
  /** one of them, or undefined of none */
  one<Item>(items: readonly Item[]): Item | undefined;
}

function chooserOf(whole: Chooser['whole']): Chooser {
  return { whole, one: (items) => (items.length === 0 ? undefined : items[whole(0, items.length - 1)]) };
}

export const chooseByChance = (random: Random): Chooser => chooserOf(random.wholeBetween);

/** Takes one number after the other, from the first again when they run out; 0 chooses the first and least. */
export function chooseByNumbers(numbers: readonly number[]): Chooser {
  let next = 0;
  return chooserOf((from, to) => {
    const number = numbers[next % numbers.length] ?? 0;
    next += 1;
    return from + (number % (to - from + 1));
  });
}
