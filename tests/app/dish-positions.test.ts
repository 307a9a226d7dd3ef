import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DISH_SIZE, dishPlaces } from '@/app/(bank)/germination/_parts/dish-positions';

const RNG_SEED = 20261125;
const MOST_SEEDS_DRAWN = 200;

test('every seed has its own place inside the dish, and neighbours do not overlap', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: MOST_SEEDS_DRAWN }), (seeds) => {
      const { places, spacing } = dishPlaces(seeds);
      expect(places).toHaveLength(seeds);
      const middle = DISH_SIZE / 2;
      for (const [index, place] of places.entries()) {
        expect(Math.hypot(place.x - middle, place.y - middle)).toBeLessThan(middle);
        for (const other of places.slice(index + 1)) {
          // Places are rounded to a tenth.
          expect(Math.hypot(place.x - other.x, place.y - other.y)).toBeGreaterThan(spacing - 0.3);
        }
      }
    }),
    { seed: RNG_SEED, numRuns: 60 },
  );
});

test('the same number of seeds always lies the same way', () => {
  expect(dishPlaces(50)).toEqual(dishPlaces(50));
});
