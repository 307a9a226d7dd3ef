import type { GerminationMethod, SubstratumCode } from './crop-facts';
import { SUBSTRATA } from './crop-facts';
import { temperaturesFromPrinted } from './parse-printed';

type PrintedMethod = {
  substrata: SubstratumCode[];
  /** Degrees C as printed, see temperaturesFromPrinted. */
  temperatures: string;
  /** What to read instead, where the print is clearly a slip. */
  readTemperaturesAs?: string;
  firstCountDays: number | null;
  finalCountDays: number;
  light?: boolean;
  preTreatment?: string | null;
  hardSeedOccurs?: boolean;
};

function method(printed: PrintedMethod, mark: GerminationMethod['mark'], source: string): GerminationMethod {
  return {
    substrata: printed.substrata,
    substrataInWords: printed.substrata.map((code) => SUBSTRATA[code]),
    temperatures: printed.temperatures,
    temperatureRegimes: temperaturesFromPrinted(printed.readTemperaturesAs ?? printed.temperatures),
    firstCountDays: printed.firstCountDays,
    finalCountDays: printed.finalCountDays,
    light: printed.light ?? false,
    preTreatment: printed.preTreatment ?? null,
    hardSeedOccurs: printed.hardSeedOccurs ?? false,
    mark,
    source,
  };
}

/**
 * Testing conditions of 7 CFR 201.58 Table 2.
 *
 * @param section 'vegetable' or 'agricultural' part of the table
 * @param printedKind kind as printed
 * @param printed the row; days from the start of the test, prechilling not counted
 * @returns germination method marked 'published'
 * @throws RangeError when a temperature cannot be read
 * Checked row by row against published/cfr-201-58.tsv: tests/domain/reference/published-tables.test.ts
 */
export function federalMethod(
  section: 'vegetable' | 'agricultural',
  printedKind: string,
  printed: PrintedMethod,
): GerminationMethod {
  const source =
    'US Federal Seed Act regulations (2015 edition, orientation only), 7 CFR 201.58 Table 2, ' +
    `https://github.com/18F/allregs html/sections/7CFR201.58.html, ${section} kind "${printedKind}"`;
  return method(printed, 'published', source);
}

/**
 * Testing conditions recalled for a crop that the table does not name.
 *
 * @param basis what they are recalled from or likened to
 * @param conditions conditions; days from the start of the test
 * @returns germination method marked 'from memory'
 * @throws RangeError when a temperature cannot be read
 */
export function recalledMethod(basis: string, conditions: PrintedMethod): GerminationMethod {
  return method(conditions, 'from memory', `From memory: ${basis}`);
}
