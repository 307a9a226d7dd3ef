import { describe, expect, test } from 'vitest';
import { fitStorageExperiment } from '../../../../lib/domain/longevity/storage-experiment/fit-storage-experiment';
import type { ExperimentRefusalReason } from '../../../../lib/domain/longevity/storage-experiment/refuse-experiment';
import type { StorageRow } from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { condition } from './simulated-experiments';

const dry = condition(5, 30, [
  [0, 48],
  [200, 40],
  [400, 28],
]);
const moist = condition(10, 30, [
  [0, 48],
  [20, 41],
  [40, 25],
]);
const level = (moisture: number, temperature: number) =>
  condition(moisture, temperature, [
    [0, 46],
    [50, 46],
    [100, 46],
  ]);

const cases: [string, ExperimentRefusalReason, string, StorageRow[], 'fixed' | 'fitted'][] = [
  ['no row', 'no-counts', 'no count', [], 'fixed'],
  ['rows without seed', 'no-counts', 'no count', condition(5, 30, [[0, 0]], { sown: 0 }), 'fixed'],
  ['only counts before storage', 'nothing-stored', 'before storage', condition(5, 30, [[0, 48]]), 'fixed'],
  [
    'one moisture',
    'one-moisture',
    '5 % moisture',
    [
      ...dry,
      ...condition(5, 45, [
        [0, 48],
        [30, 20],
      ]),
    ],
    'fixed',
  ],
  ['one temperature, CH and CQ asked for', 'too-few-temperatures', 'at 30 °C only', [...dry, ...moist], 'fitted'],
  [
    ...(['two temperatures, CH and CQ asked for', 'too-few-temperatures', '30 °C and 45 °C only'] as const),
    [
      ...dry,
      ...moist,
      ...condition(5, 45, [
        [0, 48],
        [30, 20],
      ]),
    ],
    'fitted',
  ],
  [
    ...(['a lot of which all germinated', 'lot-without-variation', 'Every seed of lot B'] as const),
    [
      ...dry,
      ...moist,
      ...condition(
        5,
        30,
        [
          [0, 50],
          [100, 50],
        ],
        { lot: 'B' },
      ),
    ],
    'fixed',
  ],
  [
    ...(['a lot of which none germinated', 'lot-without-variation', 'No seed of lot B'] as const),
    [
      ...dry,
      ...moist,
      ...condition(
        5,
        30,
        [
          [0, 0],
          [100, 0],
        ],
        { lot: 'B' },
      ),
    ],
    'fixed',
  ],
  [
    ...(['fewer counts than unknowns', 'too-few-counts', '2 different counts cannot settle 3'] as const),
    [...condition(5, 30, [[200, 40]]), ...condition(10, 30, [[20, 41]])],
    'fixed',
  ],
  [
    ...(['two dishes at one time are one count', 'too-few-counts', '2 different counts'] as const),
    [
      ...condition(5, 30, [
        [200, 40],
        [200, 41],
      ]),
      ...condition(10, 30, [[20, 41]]),
    ],
    'fixed',
  ],
  [
    ...(['moisture and temperature changed together', 'confounded', 'cannot be told apart'] as const),
    [
      ...condition(5, 10, [
        [0, 48],
        [200, 40],
        [400, 28],
      ]),
      ...condition(8, 30, [
        [0, 48],
        [20, 40],
        [40, 28],
      ]),
      ...condition(12, 45, [
        [0, 48],
        [2, 40],
        [4, 28],
      ]),
    ],
    'fitted',
  ],
  ['no decline anywhere', 'no-decline', 'in any condition', [...level(5, 20), ...level(9, 20)], 'fixed'],
  [
    ...(['no decline in all conditions but one', 'no-decline', '5 % and 20 °C'] as const),
    [
      ...level(5, 20),
      ...condition(9, 20, [
        [0, 46],
        [50, 30],
        [100, 12],
      ]),
    ],
    'fixed',
  ],
  [
    ...(['all alive, then all dead', 'separation', 'Counts in between'] as const),
    [
      ...condition(5, 30, [
        [0, 50],
        [100, 50],
        [200, 0],
      ]),
      ...condition(10, 30, [
        [0, 50],
        [10, 50],
        [20, 0],
      ]),
    ],
    'fixed',
  ],
];

describe('refusals say why, and never NaN', () => {
  test.each(cases)('%s', (_, reason, words, rows, temperatureCoefficients) => {
    const fit = fitStorageExperiment(rows, { temperatureCoefficients });
    expect(fit).toMatchObject({ ok: false, reason });
    if (!fit.ok) expect(fit.message).toContain(words);
  });
});

test('one temperature is enough where CH and CQ are held', () => {
  expect(fitStorageExperiment([...dry, ...moist])).toMatchObject({ ok: true });
});

test('a condition that has not declined yet does no harm where others settle the constants', () => {
  const fit = fitStorageExperiment([
    ...condition(4, 30, [
      [0, 48],
      [50, 48],
      [100, 49],
    ]),
    ...dry,
    ...moist,
  ]);
  expect(fit).toMatchObject({ ok: true });
});

test('impossible rows are refused by number, argument and value', () => {
  const [row] = dry as [StorageRow];
  const expectRefused = (change: Partial<StorageRow>, words: string) =>
    expect(() => fitStorageExperiment([row, { ...row, ...change }])).toThrow(words);
  expectRefused({ days: -1 }, 'row 2: days must be a number of at least 0, got -1');
  expectRefused({ days: Number.NaN }, 'days');
  expectRefused({ germinated: 51 }, 'germinated must be a whole number from 0 to 50, got 51');
  expectRefused({ germinated: 1.5 }, 'germinated');
  expectRefused({ sown: -1, germinated: 0 }, 'sown');
  expectRefused({ moisturePercent: 0 }, 'moisturePercent must be above 0 and below 100, got 0');
  expectRefused({ days: 5, moisturePercent: null }, 'moisturePercent');
  expectRefused({ days: 5, temperatureC: null }, 'temperatureC');
  expectRefused({ temperatureC: 151 }, 'temperatureC');
});
