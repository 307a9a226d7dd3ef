import { SUBSTRATA, type TemperatureRegime } from '@/lib/domain/reference/crop-facts';
import { temperaturesFromPrinted } from '@/lib/domain/reference/parse-printed';
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
  return regimes(printed)?.map(inWords).join(', or ') ?? printed;
}

/**
 * The substrates of a method one by one. They are stored in one text, joined by commas, and some have a comma inside.
 *
 * @param substrata  'between blotters, paper towel, folded or rolled'
 * @returns ['between blotters', 'paper towel, folded or rolled']; words of the bank's own are split at each comma
 * Checked in tests/app/method-words.test.ts
 */
export function substratesOf(substrata: string): string[] {
  const found: string[] = [];
  let rest = substrata;
  while (rest !== '') {
    const known = KNOWN_SUBSTRATES.find((words) => rest === words || rest.startsWith(`${words}, `));
    const comma = rest.indexOf(', ');
    const next = known ?? (comma < 0 ? rest : rest.slice(0, comma));
    found.push(next);
    rest = rest.slice(next.length + ', '.length);
  }
  return found;
}

// The longest first: 'paper towel, folded or rolled' must not end at its comma.
const KNOWN_SUBSTRATES = Object.values(SUBSTRATA).sort((a, b) => b.length - a.length);

/** Each substrate with each temperature, to be picked in the form: 'top of blotters, 20–30 °C'. */
export function methodsOffered(methods: readonly TestingMethod[]): string[] {
  return methods.flatMap((method) => {
    const temperatures = regimes(method.temperatures)?.map(inShort) ?? [method.temperatures];
    return substratesOf(method.substrata).flatMap((substrate) => temperatures.map((one) => `${substrate}, ${one}`));
  });
}

const inShort = ({ dayC, nightC }: TemperatureRegime) => (nightC === null ? `${dayC} °C` : `${nightC}–${dayC} °C`);

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

/** null when these are words of the bank's own, not figures as printed in the reference */
function regimes(printed: string): TemperatureRegime[] | null {
  try {
    return temperaturesFromPrinted(printed);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}
