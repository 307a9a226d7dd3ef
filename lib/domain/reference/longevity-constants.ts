import type { FactMark } from './crop-facts';

/**
 * Published constants of the seed viability equation (Ellis & Roberts 1980):
 * v = Ki - p/sigma, log10 sigma = KE - CW log10(m) - CH t - CQ t^2, with p and sigma in days, m in percent of
 * fresh weight, t in degrees C, v in probits. KE, CW, CH and CQ belong to a species; Ki to a lot.
 *
 * Rows marked 'from memory' were recalled, not read: check the paper before relying on them. Outside the fitted
 * range the equation is an extrapolation. Row by row against published/viability-constants.tsv:
 * tests/domain/reference/longevity-constants.test.ts
 */
export type LongevityConstants = {
  key: string;
  /** Display name: the crop the constants were fitted to. */
  name: string;
  species: string;
  KE: number;
  CW: number;
  CH: number;
  CQ: number;
  standardErrorKE: number | null;
  standardErrorCW: number | null;
  /** Range the fit covered; null when not known. */
  moistureFromPercent: number | null;
  moistureToPercent: number | null;
  temperatureFromC: number | null;
  temperatureToC: number | null;
  /** Drying below this no longer lengthens life; null when not reported with the constants. */
  lowMoistureLimitPercent: number | null;
  /** Mark of the four constants. */
  mark: FactMark;
  /** Mark of the range; null when the range is not known. */
  rangeMark: FactMark | null;
  source: string;
  note: string | null;
};

/** Ellis & Hong 2007: 39 lots of 12 crops in hermetic storage; CH and CQ are common to all of them. */
function commonCoefficients(
  key: string,
  name: string,
  species: string,
  KE: number,
  standardErrorKE: number,
  CW: number,
  standardErrorCW: number,
): LongevityConstants {
  return {
    key,
    name,
    species,
    KE,
    CW,
    CH: 0.0322,
    CQ: 0.000454,
    standardErrorKE,
    standardErrorCW,
    moistureFromPercent: 2,
    moistureToPercent: 25,
    temperatureFromC: 0,
    temperatureToC: 50,
    lowMoistureLimitPercent: null,
    mark: 'published',
    rangeMark: 'published',
    source: 'Ellis & Hong 2007, Seed Sci. Technol. 35:432-444 (abstract), https://centaur.reading.ac.uk/8496/',
    note: 'The range is that of the whole study, not of this crop. CH and CQ are common to its twelve crops.',
  };
}

export const LONGEVITY_CONSTANTS: readonly LongevityConstants[] = [
  commonCoefficients('maize', 'Maize', 'Zea mays', 9.993, 0.456, 5.993, 0.392),
  commonCoefficients('sorghum', 'Sorghum', 'Sorghum bicolor', 9.381, 0.428, 5.379, 0.365),
  commonCoefficients(
    'pearl-millet',
    'Pearl millet',
    'Pennisetum typhoides (syn. P. glaucum)',
    9.336,
    0.408,
    5.54,
    0.348,
  ),
  commonCoefficients('sugar-beet', 'Sugar beet', 'Beta vulgaris', 8.988, 0.387, 4.969, 0.328),
  commonCoefficients('african-rice', 'African rice', 'Oryza glaberrima', 8.786, 0.484, 4.727, 0.416),
  commonCoefficients('wheat', 'Wheat', 'Triticum aestivum', 8.498, 0.431, 4.836, 0.366),
  commonCoefficients('foxtail-millet', 'Foxtail millet', 'Setaria italica', 8.478, 0.396, 4.829, 0.339),
  commonCoefficients('sugarcane', 'Sugarcane', 'Saccharum sp.', 8.454, 0.545, 4.964, 0.518),
  commonCoefficients('finger-millet', 'Finger millet', 'Eleusine coracana', 8.288, 0.392, 4.345, 0.336),
  commonCoefficients('kodo-millet', 'Kodo millet', 'Paspalum scrobiculatum', 8.138, 0.418, 4.435, 0.36),
  commonCoefficients('rice', 'Rice', 'Oryza sativa', 8.096, 0.416, 4.246, 0.355),
  commonCoefficients('potato', 'Potato (true seed)', 'Solanum tuberosum', 8.037, 0.397, 5.152, 0.347),
  {
    key: 'cotton',
    name: 'Cotton',
    species: 'Gossypium hirsutum',
    KE: 9.24,
    CW: 5.19,
    CH: 0.03965,
    CQ: 0.000426,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: 2.2,
    moistureToPercent: 21.7,
    temperatureFromC: 40,
    temperatureToC: 65,
    lowMoistureLimitPercent: 3.6,
    mark: 'published',
    rangeMark: 'published',
    source:
      'Usberti, Roberts & Ellis 2006, Pesq. agropec. bras. 41(9):1435-1441 (abstract), http://www.scielo.br/scielo.php?script=sci_arttext&pid=S0100-204X2006000900013',
    note: 'Fitted in the heat only; limit seen at 65 C (not to be taken below 3.6 % there); hard seed was found below 6 %.',
  },
  {
    key: 'barley',
    name: 'Barley',
    species: 'Hordeum vulgare (distichum)',
    KE: 9.983,
    CW: 5.896,
    CH: 0.04,
    CQ: 0.000428,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: 5.5,
    moistureToPercent: 24.6,
    temperatureFromC: 3,
    temperatureToC: 90,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: 'published',
    source:
      'Ellis & Roberts 1980, Ann. Bot. 45:31-37, range: https://paperexplained.cn/articles/paper/detail/47b282cb652979249c417c4ba5f86f03065ee1d7',
    note: '52 hermetic environments, 1 minute to 926 days. The range was read; the four constants are recalled.',
  },
  {
    key: 'onion',
    name: 'Onion',
    species: 'Allium cepa',
    KE: 6.975,
    CW: 3.47,
    CH: 0.04,
    CQ: 0.000428,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: null,
    moistureToPercent: null,
    temperatureFromC: null,
    temperatureToC: null,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: null,
    source: 'Ellis & Roberts 1981, Seed Sci. Technol. 9:373-409',
    note: 'Range of the fit not known; constants recalled, to be checked against the paper.',
  },
  {
    key: 'soybean',
    name: 'Soybean',
    species: 'Glycine max',
    KE: 7.748,
    CW: 3.979,
    CH: 0.053,
    CQ: 0.000228,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: null,
    moistureToPercent: null,
    temperatureFromC: null,
    temperatureToC: null,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    note: 'Range of the fit not known; constants recalled, to be checked against the paper.',
  },
  {
    key: 'cowpea',
    name: 'Cowpea',
    species: 'Vigna unguiculata',
    KE: 8.69,
    CW: 4.715,
    CH: 0.026,
    CQ: 0.000498,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: null,
    moistureToPercent: null,
    temperatureFromC: null,
    temperatureToC: null,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    note: 'Range of the fit not known; constants recalled, to be checked against the paper.',
  },
  {
    key: 'chickpea',
    name: 'Chickpea',
    species: 'Cicer arietinum',
    KE: 9.07,
    CW: 4.82,
    CH: 0.045,
    CQ: 0.000324,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: null,
    moistureToPercent: null,
    temperatureFromC: null,
    temperatureToC: null,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: null,
    source: 'Ellis, Osei-Bonsu & Roberts 1982, Ann. Bot. 50:69-82',
    note: 'Range of the fit not known; constants recalled, to be checked against the paper.',
  },
  {
    key: 'lettuce',
    name: 'Lettuce',
    species: 'Lactuca sativa',
    KE: 8.218,
    CW: 4.797,
    CH: 0.0489,
    CQ: 0.000365,
    standardErrorKE: null,
    standardErrorCW: null,
    moistureFromPercent: null,
    moistureToPercent: null,
    temperatureFromC: null,
    temperatureToC: null,
    lowMoistureLimitPercent: null,
    mark: 'from memory',
    rangeMark: null,
    source: 'Kraak & Vos 1987, Ann. Bot. 59:343-349',
    note: 'Range of the fit not known; constants recalled, to be checked against the paper.',
  },
];

/**
 * Temperature coefficients common to eight species (barley, chickpea, cowpea, soybean, elm, mahogany, terb,
 * lettuce). That they do not differ was read; the two numbers are recalled.
 */
export const COMMON_TEMPERATURE_COEFFICIENTS = {
  CH: 0.0329,
  CQ: 0.000478,
  moistureFromPercent: 1.8,
  moistureToPercent: 25,
  temperatureFromC: -13,
  temperatureToC: 90,
  mark: 'from memory' as FactMark,
  source:
    'Dickie, Ellis, Kraak, Ryder & Tompsett 1990, Ann. Bot. 65:197-204, https://www.gov.uk/dfid-research-outputs/temperature-and-seed-storage-longevity',
};

/**
 * The constants with that key.
 *
 * @param key as in LONGEVITY_CONSTANTS
 * @returns the constants with their range and source
 * @throws RangeError when no constants have that key
 */
export function getLongevityConstants(key: string): LongevityConstants {
  const found = LONGEVITY_CONSTANTS.find((constants) => constants.key === key);
  if (!found) throw new RangeError(`getLongevityConstants: no constants have the key "${key}"`);
  return found;
}
