/*
 * A method as it is printed names several substrates and several temperatures; a tray stands on one, at one. And trays of
 * one temperature and one light stand in the same incubator, whatever the crop.
 */
import { SUBSTRATA, type TemperatureRegime } from '../../reference/crop-facts';
import { temperaturesFromPrinted } from '../../reference/parse-printed';

export interface MethodToChoose {
  id: string;
  /** joined by commas */
  substrata: string;
  /** as printed, '20-30; 25'; or words of the bank's own */
  temperatures: string;
  light: boolean;
}

/** One way in which a crop can be tested. */
export interface MethodChoice<Method extends MethodToChoose = MethodToChoose> {
  /** names it in forms */
  key: string;
  method: Method;
  substrate: string;
  /** one regime, as printed: '20-30' */
  temperatures: string;
  light: boolean;
}

/**
 * Every way that the methods of a crop allow, the printed first substrate and temperature first.
 *
 * @returns empty where the crop has no method
 * Checked in tests/domain/germination/plan/method-choices.test.ts
 */
export function methodChoices<Method extends MethodToChoose>(methods: readonly Method[]): MethodChoice<Method>[] {
  return methods.flatMap((method) => {
    const regimes = regimesOf(method.temperatures);
    const temperatures = regimes ? regimes.map(printedRegime) : [method.temperatures];
    const substrates = substratesOf(method.substrata);
    return temperatures.flatMap((regime, at) =>
      (substrates.length > 0 ? substrates : ['']).map((substrate, on) => ({
        key: `${method.id}:${at}:${on}`,
        method,
        substrate,
        temperatures: regime,
        light: method.light,
      })),
    );
  });
}

/**
 * What trays must share to stand in one incubator.
 *
 * @returns a key, the same for the same temperatures and light; null: no method is known
 * Checked in tests/domain/germination/plan/method-choices.test.ts
 */
export function incubatorKey(choice: Pick<MethodChoice, 'temperatures' | 'light'> | undefined): string | null {
  return choice ? `${choice.temperatures}${choice.light ? ' light' : ''}` : null;
}

/**
 * The substrates of a method one by one. They are stored in one text, joined by commas, and some have a comma inside.
 *
 * @param substrata  'between blotters, paper towel, folded or rolled'
 * @returns ['between blotters', 'paper towel, folded or rolled']; words of the bank's own are split at each comma
 * Checked in tests/domain/germination/plan/method-choices.test.ts
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

/**
 * The temperatures of a method.
 *
 * @param printed  '20-30; 25'
 * @returns null when these are words of the bank's own, not figures as printed in the reference
 * Checked in tests/app/method-words.test.ts
 */
export function regimesOf(printed: string): TemperatureRegime[] | null {
  try {
    return temperaturesFromPrinted(printed);
  } catch (error) {
    if (error instanceof RangeError) return null;
    throw error;
  }
}

const printedRegime = ({ dayC, nightC }: TemperatureRegime) => (nightC === null ? `${dayC}` : `${nightC}-${dayC}`);
