import type { CropFacts, Fact, FactKind } from './crop-facts';
import { metresFromFeet, metresFromPrinted, rangeFromPrinted } from './parse-printed';

/**
 * Builders that turn one printed table row into a fact with its citation, so that the crop files hold only what
 * is printed (feet, miles, percent) and every conversion happens in one place. Checked row by row against the
 * table copies in published/: tests/domain/reference/published-tables.test.ts
 */

const FEDERAL = 'US Federal Seed Act regulations (2015 edition, orientation only)';
const at = (section: string) => `https://github.com/18F/allregs html/sections/7CFR${section}.html`;

const GUIDE_CHART = "Seed Saving Chart (growers' chart), https://www.scribd.com/document/307263688/Seed-Saving-Chart";
const GUIDES_RECALLED = 'Common seed-saving guides, ranges from several, recalled and not checked';

/** Compiled storage-life tables by the letter of their column in published/storage-life-years.tsv. */
export const STORAGE_LIFE_SOURCES = {
  A: 'US state extension services, compiled (https://calorg.wordpress.com/2015/03/17)',
  B: 'old vegetable-gardening text, maximum age (https://bookdome.com, Vegetable Gardening, 151: The Longevity of Seeds)',
  C: 'Ohio State University Extension as quoted (https://utcnfoods.com/2013/01/26)',
  D: 'seed storage life chart (https://egofelix.com/produce-plants-for-seeds)',
  E: "growers' Seed Saving Chart (https://www.scribd.com/document/307263688)",
} as const;
export type StorageLifeSource = keyof typeof STORAGE_LIFE_SOURCES;

/** Nearly all garden and field crops: seed may be dried and frozen. Recalled, not looked up crop by crop. */
export const ORTHODOX: CropFacts['storageBehaviour'] = {
  behaviour: 'orthodox',
  mark: 'from memory',
  source: 'From memory: seed of this crop is dried for store everywhere; no crop-by-crop table was at hand',
};

/**
 * Isolation of certified, registered and foundation seed (7 CFR 201.76), lowest to highest class.
 *
 * @param printedCrop crop as the table prints it
 * @param feet distance by class, feet, >= 0; null where the table has none
 * @param note condition printed with the row, or null
 * @returns fact in metres, kept to the centimetre
 * @throws RangeError when no class has a distance, or one is negative
 * Checked against published/cfr-201-76-isolation.tsv
 */
export function federalIsolation(
  printedCrop: string,
  feet: { foundation: number | null; registered: number | null; certified: number | null },
  note: string | null = null,
): Fact {
  const classes = (['certified', 'registered', 'foundation'] as const).flatMap((name) => {
    const distance = feet[name];
    return distance === null ? [] : [{ name, metres: metresFromFeet(distance) }];
  });
  if (classes.length === 0) throw new RangeError(`federalIsolation: no distance for ${printedCrop}`);
  const metres = classes.map((one) => one.metres);
  const distances = classes.map((one) => `${one.name} seed ${one.metres} m`).join(', ');
  return {
    kind: 'isolation distance',
    lower: Math.min(...metres),
    upper: Math.max(...metres),
    text: note === null ? distances : `${distances}; ${note}`,
    mark: 'published',
    source: `${FEDERAL}, 7 CFR 201.76, ${at('201.76')}, crop "${printedCrop}"`,
  };
}

function guideSource(mark: 'common practice' | 'from memory', printedRow: string): string {
  return `${mark === 'common practice' ? GUIDE_CHART : GUIDES_RECALLED}, row "${printedRow}"`;
}

/**
 * Garden-scale isolation from a growers' chart (common practice) or from guides recalled (from memory).
 *
 * @param printedRow row name in published/isolation-population.tsv
 * @param printedDistance feet or miles as printed, see metresFromPrinted
 * @param mark 'common practice' when the chart was read, else 'from memory'
 * @param note remark, or null
 * @returns fact in metres
 * @throws RangeError when the distance cannot be read
 * Checked against published/isolation-population.tsv
 */
export function guideIsolation(
  printedRow: string,
  printedDistance: string,
  mark: 'common practice' | 'from memory',
  note: string | null = null,
): Fact {
  const text = `garden scale, given as ${printedDistance}`;
  return {
    kind: 'isolation distance',
    ...metresFromPrinted(printedDistance),
    text: note === null ? text : `${text}; ${note}`,
    mark,
    source: guideSource(mark, printedRow),
  };
}

/**
 * Plants to save seed from, so that the variety keeps its variation.
 *
 * @param printedRow row name in published/isolation-population.tsv
 * @param printedPlants figure or range as printed
 * @param mark 'common practice' when the chart was read, else 'from memory'
 * @param note remark, e.g. that the row belongs to a crop of the same group; or null
 * @returns fact in plants
 * @throws RangeError when the figure cannot be read
 * Checked against published/isolation-population.tsv
 */
export function guidePlants(
  printedRow: string,
  printedPlants: string,
  mark: 'common practice' | 'from memory',
  note: string | null = null,
): Fact {
  const range = rangeFromPrinted(printedPlants);
  return { kind: 'minimum plants', ...range, text: note, mark, source: guideSource(mark, printedRow) };
}

/**
 * Minimum germination of vegetable seed in interstate commerce, hard seed counted (7 CFR 201.31).
 *
 * @param printedKind kind as printed
 * @param percent whole percent as printed, 0-100
 * @returns fact as a proportion
 * Checked against published/cfr-201-31.tsv
 */
export function federalGermination(printedKind: string, percent: number): Fact {
  const proportion = percent / 100;
  return {
    kind: 'minimum germination',
    lower: proportion,
    upper: proportion,
    text: "one country's minimum for seed on sale; counts hard seed as germinated",
    mark: 'published',
    source: `${FEDERAL}, 7 CFR 201.31, ${at('201.31')}, kind "${printedKind}"`,
  };
}

/**
 * Approximate seeds per gram (7 CFR 201.46, Table 1).
 *
 * @param printedKind kind as printed
 * @param printed figure or range as printed
 * @returns fact in seeds per gram
 * @throws RangeError when the figure cannot be read
 * Checked against published/cfr-201-46-seeds-per-gram.tsv
 */
export function seedsPerGram(printedKind: string, printed: string): Fact {
  return {
    kind: 'seeds per gram',
    ...rangeFromPrinted(printed),
    text: 'approximate; varieties differ, weigh your own',
    mark: 'published',
    source: `${FEDERAL}, 7 CFR 201.46 Table 1, ${at('201.46')}, kind "${printedKind}"`,
  };
}

/**
 * Ordinary storage life: the whole span that the compiled tables give, lowest to highest.
 *
 * @param printedRow row name in published/storage-life-years.tsv
 * @param years years as printed, by source
 * @returns fact in years; the text gives each source's figure
 * @throws RangeError when there is no figure or one cannot be read
 * Checked against published/storage-life-years.tsv
 */
export function storageLife(printedRow: string, years: Partial<Record<StorageLifeSource, string>>): Fact {
  const given = Object.entries(years) as [StorageLifeSource, string][];
  if (given.length === 0) throw new RangeError(`storageLife: no figure for ${printedRow}`);
  const ranges = given.map(([, printed]) => rangeFromPrinted(printed));
  return {
    kind: 'storage life',
    lower: Math.min(...ranges.map((range) => range.lower)),
    upper: Math.max(...ranges.map((range) => range.upper)),
    text: `years by source: ${given.map(([letter, printed]) => `${letter} ${printed}`).join(', ')}`,
    mark: 'common practice',
    source: `${given.map(([letter]) => `${letter}: ${STORAGE_LIFE_SOURCES[letter]}`).join('; ')}; row "${printedRow}"`,
  };
}

/**
 * A fact recalled, not looked up: shown with its mark so that nobody takes it for a table value.
 *
 * @param kind what the figure is
 * @param lower low end, unit of the kind
 * @param upper high end
 * @param basis why this figure: what it is recalled from or likened to
 * @returns fact marked 'from memory'
 * @throws RangeError when the range runs backwards
 */
export function recalled(kind: FactKind, lower: number, upper: number, basis: string): Fact {
  if (!(lower <= upper)) throw new RangeError(`recalled: ${kind} runs from ${lower} to ${upper}`);
  return { kind, lower, upper, text: null, mark: 'from memory', source: `From memory: ${basis}` };
}

/**
 * Oil as a fraction of the dry weight of the whole seed (with its coat or husk), as sown.
 *
 * @param lower low end, 0-1
 * @param upper high end, 0-1
 * @returns fact marked 'from memory'
 * @throws RangeError when the range runs backwards
 */
export function oilFraction(lower: number, upper: number): Fact {
  return recalled('oil fraction', lower, upper, 'usual range of seed-oil contents in general texts, not checked');
}
