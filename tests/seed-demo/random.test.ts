import { describe, expect, test } from 'vitest';
import { randomFor } from '@/seed-demo/random';

const numbersOf = (name: string) => {
  const random = randomFor(name);
  return Array.from({ length: 20 }, () => random.fraction());
};

describe('streams of chance', () => {
  test('the same name gives the same numbers, another name others', () => {
    expect(numbersOf('lot A')).toEqual(numbersOf('lot A'));
    expect(numbersOf('lot A')).not.toEqual(numbersOf('lot B'));
  });

  test('draws have the means and spreads that they claim', () => {
    const random = randomFor('means');
    const draws = Array.from({ length: 20_000 }, () => random.normal());
    const mean = draws.reduce((sum, draw) => sum + draw, 0) / draws.length;
    const variance = draws.reduce((sum, draw) => sum + (draw - mean) ** 2, 0) / draws.length;
    // Four standard errors: 4 / sqrt(20000) = 0.028; 4 sqrt(2 / 20000) = 0.04.
    expect(Math.abs(mean)).toBeLessThan(0.029);
    expect(Math.abs(variance - 1)).toBeLessThan(0.04);
    expect(Math.abs(random.binomial(20_000, 0.3) / 20_000 - 0.3)).toBeLessThan(0.013);
  });
});
