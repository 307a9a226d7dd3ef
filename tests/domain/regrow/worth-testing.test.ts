import { describe, expect, it } from 'vitest';
import { isWorthTesting } from '@/lib/domain/regrow/worth-testing';

describe('lots worth testing', () => {
  it.each([
    ['a lot in doubt', { seedsLeft: 500, everTested: true, chanceBelow: 0.4 }, true],
    ['a tested lot just short of certain', { seedsLeft: 500, everTested: true, chanceBelow: 0.899 }, true],
    ['a lot without forecast', { seedsLeft: 500, everTested: true, chanceBelow: null }, true],
    [
      'a lot that nobody has tested, however it is forecast',
      { seedsLeft: 500, everTested: false, chanceBelow: 0.99 },
      true,
    ],
    [
      'a tested lot that is all but surely below the line',
      { seedsLeft: 500, everTested: true, chanceBelow: 0.9 },
      false,
    ],
    ['an empty lot', { seedsLeft: 0, everTested: false, chanceBelow: 0.4 }, false],
  ])('%s', (_what, lot, worth) => {
    expect(isWorthTesting(lot)).toBe(worth);
  });
});
