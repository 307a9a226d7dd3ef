import fc from 'fast-check';
import { expect, test } from 'vitest';
import { moistureFromDuplicates } from '../../../lib/domain/moisture/oven';
import { type OvenDish, ovenDishes } from '../../../lib/domain/moisture/oven-dishes';
import { ovenTest } from '../../../lib/domain/moisture/oven-test';

const dish = (lost: number, predrying: Partial<OvenDish> = {}): OvenDish => ({
  dishG: 20,
  dishAndFreshG: 25,
  dishAndDryG: 25 - lost,
  beforePreDryingG: null,
  afterPreDryingG: null,
  ...predrying,
});

test('two dishes 0.2 points apart agree, 0.22 are to be repeated, and the mean stands either way', () => {
  const agree = ovenDishes([dish(0.4), dish(0.41)]);
  expect(agree.verdict).toBe('agree');
  expect(agree.moisturePercent).toBeCloseTo(8.1, 10);
  const repeat = ovenDishes([dish(0.4), dish(0.411)]);
  expect(repeat).toMatchObject({ verdict: 'repeat', permittedPoints: 0.2 });
  expect(repeat.rangePoints).toBeCloseTo(0.22, 10);
  expect(repeat.moisturePercent).toBeCloseTo(8.11, 10);
});

test('of three dishes the highest is held against the lowest', () => {
  expect(ovenDishes([dish(0.4), dish(0.408), dish(0.4)]).verdict).toBe('agree');
  expect(ovenDishes([dish(0.4), dish(0.408), dish(0.416)]).verdict).toBe('repeat');
});

test('pre-drying counts in, dish by dish: 100 g to 80 g, then 8 % of the rest, is 26.4 % of the first weight', () => {
  const { dishPercents } = ovenDishes([dish(0.4, { beforePreDryingG: 100, afterPreDryingG: 80 }), dish(0.4)]);
  expect(dishPercents[0]).toBeCloseTo(26.4, 10);
  expect(dishPercents[1]).toBeCloseTo(8, 10);
});

test('two dishes give what the calculator of Reference gives, in either order', () => {
  const weight = fc.record({
    dish: fc.double({ min: 0, max: 50, noNaN: true }),
    fresh: fc.double({ min: 2, max: 20, noNaN: true }),
    lostShare: fc.double({ min: 0, max: 0.4, noNaN: true }),
  });
  fc.assert(
    fc.property(weight, weight, (first, second) => {
      const dishes = [first, second].map(({ dish: dishG, fresh, lostShare }) => ({
        ...dish(0),
        dishG,
        dishAndFreshG: dishG + fresh,
        dishAndDryG: dishG + fresh - lostShare * fresh,
      }));
      const ours = ovenDishes(dishes);
      const calculator = ovenTest({
        samples: dishes.map((one) => ({
          dish: one.dishG,
          dishAndFresh: one.dishAndFreshG,
          dishAndDry: one.dishAndDryG,
        })),
        predrying: null,
        stepG: 0.001,
      });
      expect(ours.dishPercents).toEqual(calculator.samples.map(({ moisturePercent }) => moisturePercent));
      expect(ours.verdict === 'agree').toBe(calculator.verdict.kind === 'agree');
      const both = moistureFromDuplicates({
        firstPercent: ours.dishPercents[0] as number,
        secondPercent: ours.dishPercents[1] as number,
      });
      if (both.ok) expect(ours.moisturePercent).toBeCloseTo(both.moisturePercent, 10);
      expect(ovenDishes(dishes.toReversed()).moisturePercent).toBeCloseTo(ours.moisturePercent, 12);
    }),
    { seed: 20 },
  );
});

test('refuses one dish, weights out of order, and half a pre-drying', () => {
  expect(() => ovenDishes([dish(0.4)])).toThrow(/at least two, got 1/);
  expect(() => ovenDishes([dish(-1), dish(0.4)])).toThrow(RangeError);
  expect(() => ovenDishes([dish(0.4, { beforePreDryingG: 100 }), dish(0.4)])).toThrow(/pre-drying/);
});
