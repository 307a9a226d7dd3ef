import { expect, test } from 'vitest';
import { ovenTest } from '../../../lib/domain/moisture/oven-test';

const sample = (lost: number) => ({ dish: 20, dishAndFresh: 25, dishAndDry: 25 - lost });

test('one sample: its moisture, and no word about agreement', () => {
  const result = ovenTest({ samples: [sample(0.4)], predrying: null, stepG: 0.001 });
  expect(result.moisturePercent).toBeCloseTo(8, 10);
  expect(result).toMatchObject({ verdict: { kind: 'one-sample' }, predriedPercent: null });
});

test('two samples 0.2 points apart agree and their mean is reported', () => {
  const result = ovenTest({ samples: [sample(0.4), sample(0.41)], predrying: null, stepG: 0.001 });
  expect(result.moisturePercent).toBeCloseTo(8.1, 10);
  expect(result.verdict.kind).toBe('agree');
  expect(result.standardPoints).toBeCloseTo(0.1, 10);
});

test('two samples further apart give no moisture', () => {
  const result = ovenTest({ samples: [sample(0.4), sample(0.411)], predrying: null, stepG: 0.001 });
  expect(result).toMatchObject({ moisturePercent: null, verdict: { kind: 'differ', tolerancePoints: 0.2 } });
});

test('pre-drying counts in: 100 g to 80 g, then 8 % of the rest, is 26.4 % of the first weight', () => {
  const result = ovenTest({ samples: [sample(0.4)], predrying: { beforeG: 100, afterG: 80 }, stepG: 0.001 });
  expect(result.predriedPercent).toBe(20);
  expect(result.moisturePercent).toBeCloseTo(26.4, 10);
});

test('a coarse balance in the pre-drying makes the whole test less sure', () => {
  const at = (beforeG: number) =>
    ovenTest({ samples: [sample(0.4)], predrying: { beforeG, afterG: beforeG * 0.8 }, stepG: 0.1 }).standardPoints;
  expect(at(10)).toBeGreaterThan(at(1000));
});

test('refuses three samples, and weights out of order', () => {
  const three = [sample(0.4), sample(0.4), sample(0.4)];
  expect(() => ovenTest({ samples: three, predrying: null, stepG: 0.001 })).toThrow(/got 3/);
  expect(() => ovenTest({ samples: [], predrying: null, stepG: 0.001 })).toThrow(/got 0/);
  expect(() => ovenTest({ samples: [sample(-1)], predrying: null, stepG: 0.001 })).toThrow(RangeError);
});
