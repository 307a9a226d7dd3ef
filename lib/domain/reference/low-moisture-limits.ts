import type { FactMark } from './crop-facts';

/**
 * Low-moisture limits: below these, further drying no longer lengthens life, so a forecast holds moisture at the
 * limit. Limits rise as the store cools, so a limit seen at 65 C is too low for a freezer.
 * Row by row against published/low-moisture-limits.tsv: tests/domain/reference/longevity-constants.test.ts
 */
export type LowMoistureLimit = {
  crop: string;
  species: string;
  /** Percent of fresh weight. 'limit': no gain below; 'no harm': seen unharmed down to here, limit not reached. */
  kind: 'limit' | 'no harm';
  lowerPercent: number;
  upperPercent: number;
  temperatureFromC: number;
  temperatureToC: number;
  mark: FactMark;
  source: string;
};

const TWELVE_SPECIES =
  'Ellis, Hong & Roberts 1989, Ann. Bot. 63:601-611 (temperature recalled), https://www.scribd.com/document/566964790/';
const CLOVERS = 'Ellis & Hong 2006, Ann. Bot., https://insights.ovid.com/abot/200605000/00008707-200605000-00012';
const COTTON =
  'Usberti, Roberts & Ellis 2006, Pesq. agropec. bras. 41(9):1435-1441, http://www.scielo.br/scielo.php?script=sci_arttext&pid=S0100-204X2006000900013';
const VERY_DRY =
  'Ellis, Hong & Roberts 1995, Ann. Bot. 76:521-534, https://agris.fao.org/search/es/records/65df443e63b8185d9cabd74c';

function row(
  species: string,
  crop: string,
  kind: LowMoistureLimit['kind'],
  [lowerPercent, upperPercent]: [number, number],
  [temperatureFromC, temperatureToC]: [number, number],
  source: string,
): LowMoistureLimit {
  return {
    crop,
    species,
    kind,
    lowerPercent,
    upperPercent,
    temperatureFromC,
    temperatureToC,
    mark: 'published',
    source,
  };
}

export const LOW_MOISTURE_LIMITS: readonly LowMoistureLimit[] = [
  row('Guizotia abyssinica', 'niger', 'limit', [2.4, 2.4], [65, 65], TWELVE_SPECIES),
  row('Pisum sativum', 'pea', 'limit', [6.2, 6.2], [65, 65], TWELVE_SPECIES),
  row('Trifolium pratense', 'red clover', 'limit', [4.0, 4.0], [65, 65], CLOVERS),
  row('Trifolium pratense', 'red clover', 'limit', [5.4, 5.4], [30, 40], CLOVERS),
  row('Medicago sativa', 'alfalfa', 'limit', [4.2, 4.2], [65, 65], CLOVERS),
  row('Medicago sativa', 'alfalfa', 'limit', [5.5, 5.5], [30, 40], CLOVERS),
  row('Gossypium hirsutum', 'cotton', 'limit', [3.6, 3.6], [65, 65], COTTON),
  row('Lactuca sativa', 'lettuce', 'no harm', [2.5, 3.0], [35, 35], VERY_DRY),
  row('Helianthus annuus', 'sunflower', 'no harm', [2.2, 2.5], [35, 35], VERY_DRY),
];

/**
 * For crops without a row: the limits of twelve species lie in equilibrium with about this relative humidity
 * (0-1), so the moisture in equilibrium with it stands in for the limit. The copy read prints "106%" with the
 * decimal point lost (standard error 0.3 points); read here as 10.6 %.
 */
export const LOW_MOISTURE_LIMIT_RELATIVE_HUMIDITY = {
  value: 0.106,
  standardError: 0.003,
  mark: 'published' as FactMark,
  source: TWELVE_SPECIES,
};
