import { describe, expect, test } from 'vitest';
import {
  daysInWords,
  describeGoodness,
  describeSigma,
  fitCautions,
} from '../../../../lib/domain/longevity/storage-experiment/describe-fit';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { sigmaEstimate } from '../../../../lib/domain/longevity/storage-experiment/sigma-estimate';
import type { StorageRow } from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { condition, goldenExperiment } from './simulated-experiments';

function fitted(rows: StorageRow[], options: Parameters<typeof fitStorageExperiment>[1] = {}) {
  const fit = fitStorageExperiment(rows, options);
  if (!fit.ok) throw new Error(fit.message);
  return fit;
}
const ofGolden = (name: string) => fitted(goldenExperiment(name).rows, goldenExperiment(name));

test('the finding names the condition, the days and the range in which they lie', () => {
  const fit = ofGolden('one_lot_held');
  const { days, lower, upper } = sigmaEstimate(fit, { moisturePercent: 8, temperatureC: 35 });
  const [middle, low, high] = [days, lower, upper].map(Math.round);
  expect(describeSigma(fit, { moisturePercent: 8, temperatureC: 35 })).toBe(
    `At 35 °C and 8 % moisture one probit is lost in **${middle} days** (nineteen times in twenty, ${low} to ${high} days).`,
  );
  expect(describeSigma(fit, { moisturePercent: 5, temperatureC: 20 })).toMatch(
    /\*\*[\d.]+ years \([\d\u202f]+ days\)\*\* \(nineteen times in twenty, [\d.]+ years \([\d\u202f]+ days\) to [\d.]+ years/,
  );
  expect(describeSigma(ofGolden('one_lot_held'), { moisturePercent: 4, temperatureC: -18 })).toMatch(
    /^At −18 °C and 4 % moisture .* did not cover this condition/,
  );
});

test.each([
  [0.123, '0.12 days'],
  [9.44, '9.4 days'],
  [9.96, '10 days'],
  [213.7, '214 days'],
  [730, '730 days'],
  [731, '2 years (731 days)'],
  [2262, '6.2 years (2\u202f260 days)'],
  [365_250, '1\u202f000 years (365\u202f000 days)'],
])('%d days are %s', (days, words) => {
  expect(daysInWords(days)).toBe(words);
});

describe('goodness of fit in words', () => {
  test('scatter as by chance', () => {
    expect(describeGoodness(ofGolden('one_lot_held').goodness)).toBe(
      'The counts scatter about the curves no more than chance allows.',
    );
  });
  test('with hardly a count to spare', () => {
    expect(describeGoodness(ofGolden('four_counts_three_unknowns').goodness)).toContain('proves little');
  });
  test('no count to spare', () => {
    expect(describeGoodness(ofGolden('as_many_counts_as_unknowns').goodness)).toContain('nothing is left to judge');
  });
  test('more scatter than by chance: how much, how unlikely, and what was done about it', () => {
    const { goodness } = ofGolden('uneven_dishes');
    expect(describeGoodness(goodness)).toContain('4.5 times as much as chance allows');
    expect(describeGoodness(goodness)).toContain('less than once in a thousand times');
    expect(describeGoodness(goodness)).toContain(`multiplied by ${Math.sqrt(624.9 / 140).toFixed(2)}`);
  });
  test('scatter that sits in the counts before storage points to seed that never would have germinated', () => {
    const { goodness } = ofGolden('uneven_dishes');
    expect(describeGoodness({ ...goodness, shareBeforeStorage: 0.51 })).toContain(
      'dead, hard or dormant from the start',
    );
    expect(describeGoodness({ ...goodness, shareBeforeStorage: 0.5 })).not.toContain('from the start');
  });
});

describe('cautions', () => {
  test('moist seed that outlives dry seed', () => {
    const rows = [
      ...condition(10, 5, [
        [0, 48],
        [200, 40],
        [400, 28],
      ]),
      ...condition(5, 5, [
        [0, 48],
        [20, 41],
        [40, 25],
      ]),
    ];
    expect(fitCautions(fitted(rows))[0]).toContain('moister seed lived longer');
  });
  test('one temperature only, and nothing seen below it', () => {
    const cautions = fitCautions(ofGolden('one_temperature_held'));
    expect(cautions[0]).toContain('All seed was stored at 40 °C');
    expect(cautions.at(-1)).toContain('Below 40 °C nothing was seen');
  });
  test('a coefficient that the counts do not show', () => {
    const rows = [20, 25, 30].flatMap((t) => [
      ...condition(6, t, [
        [0, 48],
        [100, 40],
        [200, 28],
      ]),
      ...condition(10, t, [
        [0, 48],
        [10, 41],
        [20, 25],
      ]),
    ]);
    expect(fitCautions(fitted(rows, { temperatureCoefficients: 'fitted' })).join(' ')).toMatch(
      /C[HQ] (came out|is less)/,
    );
  });
  test('moisture beyond the equation', () => {
    expect(fitCautions(ofGolden('wheat_three_lots_held')).join(' ')).toContain('Above about 15 %');
  });
  test('none where nothing stands out', () => {
    expect(fitCautions(ofGolden('below_zero_degrees'))).toEqual([]);
  });
});
