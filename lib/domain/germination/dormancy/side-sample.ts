/** Seeds of one kind that did not grow, and what a closer look at some of them showed. */
export interface SideSample {
  /** hard (or fresh) seeds left at the end of the test: count, integer, >= 0 */
  seeds: number;
  /** how many of them were treated, stained or cut: integer, 0 <= looked <= seeds; at least 1 where there are seeds */
  looked: number;
  /** how many of those were alive: integer, 0 <= alive <= looked */
  alive: number;
}
