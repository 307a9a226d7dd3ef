import { expect, test } from 'vitest';
import { allOrNone, MORE_THAN_SET, refuse, refuseHalfTest } from '../../lib/schemas/calculators/parts-agree';

/** What is said, and beside which field. */
function said(check: (context: Parameters<typeof refuse>[0]) => void): [string, string][] {
  const found: [string, string][] = [];
  check({ addIssue: ({ path, message }) => found.push([path.join('.'), message]) });
  return found;
}

const ofTest = (grew: number | undefined, set: number | undefined) =>
  said((context) =>
    refuseHalfTest(context, {
      grew: { field: 'otherGrew', count: grew },
      set: { field: 'otherSeeds', count: set },
      test: 'the other test',
    }),
  );

test('a complaint stands beside its field', () => {
  expect(said((context) => refuse(context, 'dishes', 'Check both.'))).toEqual([['dishes', 'Check both.']]);
});

test('parts are given all or none; 0 is given', () => {
  expect(allOrNone(undefined, undefined, undefined)).toBe(true);
  expect(allOrNone(1, 0, 3)).toBe(true);
  expect(allOrNone(1, undefined, 3)).toBe(false);
  expect(allOrNone(0, undefined)).toBe(false);
});

test('the figure that is missing of a test is the one complained of', () => {
  expect(ofTest(undefined, 50)).toEqual([['otherGrew', 'Give both figures of the other test, or neither.']]);
  expect(ofTest(0, undefined)).toEqual([['otherSeeds', 'Give both figures of the other test, or neither.']]);
});

test('a whole test, or none, passes unless more grew than were set', () => {
  expect(ofTest(undefined, undefined)).toEqual([]);
  expect(ofTest(50, 50)).toEqual([]);
  expect(ofTest(51, 50)).toEqual([['otherGrew', MORE_THAN_SET]]);
});
