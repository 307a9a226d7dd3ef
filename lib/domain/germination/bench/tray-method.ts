import { temperaturesFromPrinted } from '../../reference/parse-printed';

export interface TrayMethod {
  substrate: string | null;
  /** as printed: '20-30', or the bank's own words */
  temperatures: string | null;
  light: boolean;
  preTreatment: string | null;
  /** days moist and cold before the warm days */
  prechillDays: number;
}

/**
 * How a tray was treated, in one line, as it is written into its finished test.
 *
 * @returns 'top of blotters, 20–30 °C, light, first 7 days cold, scratched'; null when nothing was noted
 * Checked in tests/domain/germination/bench/tray-method.test.ts
 */
export function trayMethodInWords(method: TrayMethod): string | null {
  const { substrate, temperatures, light, preTreatment, prechillDays } = method;
  const parts = [
    substrate,
    temperatures && temperaturesInDegrees(temperatures),
    light ? 'light' : null,
    prechillDays > 0 ? `first ${prechillDays} ${prechillDays === 1 ? 'day' : 'days'} moist and cold` : null,
    preTreatment,
  ].filter((part) => part !== null && part !== '');
  return parts.length === 0 ? null : parts.join(', ');
}

/**
 * Printed temperatures with their unit.
 *
 * @param temperatures  as the method is printed, '20-30; 20', or the bank's own words
 * @returns '20–30 °C or 20 °C'; words of the bank's own as they are
 * Checked in tests/domain/germination/bench/tray-method.test.ts
 */
export function temperaturesInDegrees(temperatures: string): string {
  try {
    return temperaturesFromPrinted(temperatures)
      .map(({ dayC, nightC }) => (nightC === null ? `${dayC} °C` : `${nightC}–${dayC} °C`))
      .join(' or ');
  } catch (error) {
    if (error instanceof RangeError) return temperatures;
    throw error;
  }
}
