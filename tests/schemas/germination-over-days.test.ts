import { describe, expect, test } from 'vitest';
import { readDailyCounts } from '../../lib/schemas/calculators/daily-counts';
import { dishesOf, germinationOverDaysSchema } from '../../lib/schemas/calculators/germination-over-days';

function dishes(text: string, seeds: number[], countsAre: 'new' | 'total' = 'new') {
  const read = readDailyCounts(text);
  if (!read.ok) throw new Error(read.message);
  return dishesOf(read.value, seeds, countsAre);
}

const errors = (fields: Record<string, string>) =>
  germinationOverDaysSchema
    .safeParse(fields)
    .error?.issues.map(({ path, message }) => `${path.join('.')}: ${message}`) ?? [];

describe('dishes from counts by day', () => {
  test('a day on which a dish was missed makes its stretch longer, and one not seen again was lost', () => {
    const found = dishes('3 4 5\n5 - 6\n7 8 -', [20, 25]);
    expect(found).toEqual({
      ok: true,
      dishes: [
        {
          seeds: 20,
          inspections: [
            { fromDay: 0, toDay: 3, germinated: 4 },
            { fromDay: 3, toDay: 7, germinated: 8 },
          ],
        },
        {
          seeds: 25,
          inspections: [
            { fromDay: 0, toDay: 3, germinated: 5 },
            { fromDay: 3, toDay: 5, germinated: 6 },
          ],
        },
      ],
    });
  });

  test('running totals give the same dishes as the counts they add up', () => {
    expect(dishes('3 4\n5 10\n7 10', [20], 'total')).toEqual(dishes('3 4\n5 6\n7 0', [20]));
  });

  test('one number of seeds serves all dishes', () => {
    expect(dishes('3 4 5', [50])).toEqual(dishes('3 4 5', [50, 50]));
  });
});

describe('what does not fit is said beside its field', () => {
  test('seeds and dishes', () => {
    expect(errors({ counts: '3 4 5', seeds: '50 50 50' })[0]).toContain(
      'seeds: 3 numbers of seeds here, but counts of 2 dishes',
    );
    expect(errors({ counts: '3 4', seeds: '50 50' })[0]).toContain('counts of 1 dish:');
  });

  test('more germinated than set', () => {
    expect(errors({ counts: '3 30\n5 30', seeds: '50' })[0]).toContain(
      'counts: Line 2: 60 have germinated by then, but 50',
    );
    expect(errors({ counts: '3 1 30\n5 1 30', seeds: '50' })[0]).toContain('in dish 2');
  });

  test('a running total that falls', () => {
    expect(errors({ counts: '3 30\n5 20', seeds: '50', countsAre: 'total' })[0]).toContain(
      'Line 2: 20 so far, but 30 before',
    );
  });

  test('no inspection at all', () => {
    expect(errors({ counts: '0 0', seeds: '50' })[0]).toContain('No inspection after day 0');
    expect(errors({ counts: '3 4 -', seeds: '50' })[0]).toContain('No inspection after day 0 in dish 2');
    expect(errors({ seeds: '50' })[0]).toContain('counts: Write a line for each inspection');
    expect(errors({ counts: '3 x', seeds: '50' })).toEqual([
      expect.stringContaining("counts: Line 1: 'x' is not a count."),
    ]);
  });

  test('what fits is taken', () => {
    expect(errors({ counts: '3 30\n5 10', seeds: '50' })).toEqual([]);
    expect(errors({ counts: '3 30\n5 40', seeds: '50', countsAre: 'total' })).toEqual([]);
    expect(errors({ counts: '3 30', seeds: '50', countsAre: 'sums' })).toEqual(['countsAre: Choose one of the list.']);
  });
});
