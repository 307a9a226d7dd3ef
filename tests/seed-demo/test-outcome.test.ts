import { expect, test } from 'vitest';
import { drawTestOutcome } from '@/seed-demo/generators/test-outcome';
import { randomFor } from '@/seed-demo/random';

test('the classes of every dish add to the seeds set, and the seeds alive follow the true viability', () => {
  const dishes = drawTestOutcome({
    viabilityProbit: 0.8416, // 80 % alive
    replicates: 400,
    seedsPerReplicate: 100,
    hardShare: 0.15,
    freshShare: 0.05,
    random: randomFor('outcome'),
  });
  const sum = { alive: 0, hard: 0, seeds: 0 };
  for (const { seeds, normal, abnormal, hard, fresh, dead } of dishes) {
    expect(normal + abnormal + hard + fresh + dead).toBe(seeds);
    expect(Math.min(normal, abnormal, hard, fresh, dead)).toBeGreaterThanOrEqual(0);
    sum.alive += normal + hard + fresh;
    sum.hard += hard;
    sum.seeds += seeds;
  }
  // Four standard errors of 40,000 seeds with uneven dishes are below 1 %.
  expect(Math.abs(sum.alive / sum.seeds - 0.8)).toBeLessThan(0.01);
  expect(Math.abs(sum.hard / sum.alive - 0.15)).toBeLessThan(0.01);
});

test('dishes of one test are a little more uneven than pure chance makes them', () => {
  const dishes = drawTestOutcome({
    viabilityProbit: 0,
    replicates: 3000,
    seedsPerReplicate: 100,
    hardShare: 0,
    freshShare: 0,
    random: randomFor('uneven dishes'),
  });
  const mean = dishes.reduce((total, dish) => total + dish.normal, 0) / dishes.length;
  const variance = dishes.reduce((total, dish) => total + (dish.normal - mean) ** 2, 0) / dishes.length;
  // Binomial alone: 25. With 0.07 probits between dishes: 25 + (100 x 0.399 x 0.07)^2 = 32.8.
  expect(variance).toBeGreaterThan(28);
  expect(variance).toBeLessThan(38);
});
