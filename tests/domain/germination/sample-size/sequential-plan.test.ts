import { expect, test } from 'vitest';
import { requirePlan } from '../../../../lib/domain/germination/sample-size/sequential-plan';
import { alwaysDecides } from './always-decides';
import { goldenPlan } from './golden-plans';

const look = (seedsTested: number, regrowAtMost: number | null, keepAtLeast: number | null) => ({
  seedsTested,
  regrowAtMost,
  keepAtLeast,
});

test('a plan whose last look leaves no count between its limits always decides', () => {
  expect(alwaysDecides(goldenPlan('published'))).toBe(true);
  expect(alwaysDecides(goldenPlan('openEnd'))).toBe(false);
  expect(alwaysDecides({ looks: [look(10, 9, null)] })).toBe(false);
  expect(alwaysDecides({ looks: [look(10, 10, null)] })).toBe(true);
  expect(alwaysDecides({ looks: [look(10, null, 0)] })).toBe(true);
  expect(alwaysDecides({ looks: [look(10, null, 1)] })).toBe(false);
});

test('looks must follow each other and limits must not cross', () => {
  expect(() => requirePlan('test', { looks: [look(10, 4, 5)] })).not.toThrow();
  for (const looks of [
    [],
    [look(0, null, null)],
    [look(10, 5, 5)],
    [look(10, null, null), look(10, 4, 5)],
    [look(2.5, null, null)],
    [look(10, -1, null)],
    [look(10, 3.5, null)],
  ]) {
    expect(() => requirePlan('test', { looks }), JSON.stringify(looks)).toThrow(RangeError);
  }
});
