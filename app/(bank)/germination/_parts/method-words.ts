import { type MethodChoice, methodChoices, regimesOf } from '@/lib/domain/germination/plan/method-choices';
import type { TemperatureRegime } from '@/lib/domain/reference/crop-facts';
import type { TestingMethod } from '@/lib/server/queries/lots-for-testing';

/**
 * Printed temperatures in words: '20-30; 25' -> '20 °C for 16 hours and 30 °C for 8 a day, or 25 °C'.
 *
 * @param printed  as the method is stored; the bank's own words are given back as they are
 * Checked in tests/app/method-words.test.ts
 */
export function temperaturesInWords(printed: string): string {
  const inWords = ({ dayC, nightC }: TemperatureRegime) =>
    nightC === null ? `${dayC} °C` : `${nightC} °C for 16 hours and ${dayC} °C for 8 a day`;
  return regimesOf(printed)?.map(inWords).join(', or ') ?? printed;
}

/** Each substrate with each temperature, to be picked in the form: 'top of blotters, 20–30 °C'. */
export function methodsOffered(methods: readonly TestingMethod[]): string[] {
  return methodChoices(methods).map(choiceInWords);
}

/** One way of testing in a line: 'top of blotters, 20–30 °C'. */
export function choiceInWords({ substrate, temperatures }: Pick<MethodChoice, 'substrate' | 'temperatures'>): string {
  return [substrate, temperaturesInShort(temperatures)].filter(Boolean).join(', ');
}

/** '20-30' -> '20–30 °C'; words of the bank's own are given back as they are. */
export function temperaturesInShort(printed: string): string {
  const inShort = ({ dayC, nightC }: TemperatureRegime) => (nightC === null ? `${dayC} °C` : `${nightC}–${dayC} °C`);
  return regimesOf(printed)?.map(inShort).join(' or ') ?? printed;
}

/** When the method counts: 'first after 6 days, last after 14'. */
export function countDaysInWords({
  firstCountDays,
  finalCountDays,
}: Pick<TestingMethod, 'firstCountDays' | 'finalCountDays'>): string | null {
  if (finalCountDays === null) return null;
  if (firstCountDays === null) return `once, after ${finalCountDays} days`;
  return `first after ${firstCountDays} days, last after ${finalCountDays}`;
}

/** Under the date of the last count: when the crop's first method counts. */
export function countHint(methods: readonly TestingMethod[]): string {
  const [method] = methods;
  const days = method ? countDaysInWords(method) : null;
  return days ? `Counted ${days}.` : 'The day the seeds were classed.';
}
