import fc from 'fast-check';
import { expect, test } from 'vitest';
import { choleskyFactor, choleskyInverse, choleskySolve } from '../../../lib/domain/statistics/cholesky';

test('inverts a matrix whose inverse is known in closed form', () => {
  // [[a, b], [b, c]]^-1 = [[c, -b], [-b, a]] / (a c - b^2)
  const inverse = choleskyInverse([
    [4, 2],
    [2, 3],
  ]) as number[][];
  for (const [i, expected] of [3 / 8, -1 / 4, -1 / 4, 1 / 2].entries()) {
    expect(inverse.flat()[i]).toBeCloseTo(expected, 14);
  }
});

test('solves the Hilbert matrix of order five, whose inverse has whole elements', () => {
  const hilbert = Array.from({ length: 5 }, (_, i) => Array.from({ length: 5 }, (__, j) => 1 / (i + j + 1)));
  // First row of the inverse: 25, -300, 1050, -1400, 630 (closed form with binomial coefficients).
  const [first] = choleskyInverse(hilbert) as number[][];
  for (const [j, expected] of [25, -300, 1050, -1400, 630].entries()) {
    expect(Math.abs((first?.[j] as number) / expected - 1)).toBeLessThan(1e-9);
  }
});

test('a matrix that is not positive definite has no factor', () => {
  expect(
    choleskyFactor([
      [1, 2],
      [2, 1],
    ]),
  ).toBeNull();
  expect(
    choleskyFactor([
      [1, 1],
      [1, 1],
    ]),
  ).toBeNull();
  expect(choleskyFactor([[0]])).toBeNull();
  expect(choleskyFactor([[Number.NaN]])).toBeNull();
  expect(
    choleskyInverse([
      [1, 1],
      [1, 1 + 1e-16],
    ]),
  ).toBeNull();
});

test('what is solved gives back the right-hand side', () => {
  const entry = fc.double({ min: -3, max: 3, noNaN: true });
  fc.assert(
    fc.property(fc.array(fc.array(entry, { minLength: 4, maxLength: 4 }), { minLength: 4, maxLength: 4 }), (a) => {
      // a aᵀ + 1 is positive definite whatever a is.
      const matrix = a.map((row, i) =>
        a.map((other, j) => row.reduce((sum, value, k) => sum + value * (other[k] as number), i === j ? 1 : 0)),
      );
      const factor = choleskyFactor(matrix);
      if (!factor) throw new Error('no factor');
      const x = choleskySolve(factor, [1, -2, 3, 0.5]);
      const back = matrix.map((row) => row.reduce((sum, value, k) => sum + value * (x[k] as number), 0));
      for (const [i, value] of [1, -2, 3, 0.5].entries()) expect(back[i]).toBeCloseTo(value, 9);
    }),
    { seed: 20261125 },
  );
});
