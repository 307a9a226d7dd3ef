import { expect, test } from 'vitest';
import { summariseTest } from '../../../lib/domain/germination/result';
import { toleranceVerdict } from '../../../lib/domain/germination/tolerance-verdict';
import { dishes } from './classed-replicate';

const verdict = (seeds: number, normals: number[]) =>
  toleranceVerdict(summariseTest({ replicates: dishes(seeds, normals) }));

test('says that replicates agree, with the range found and the usual one', () => {
  expect(verdict(100, [95, 92, 89, 90])).toBe(
    'The four replicates agree: highest and lowest differ by 6 points, up to 11 is usual.',
  );
  expect(verdict(100, [91, 92, 92, 92])).toContain('differ by 1 point, up to');
  expect(verdict(50, [45, 45])).toBe('The two replicates agree: all gave the same figure.');
});

test('says that they do not, and what to do', () => {
  expect(verdict(100, [95, 77, 89, 90])).toBe(
    'The four replicates do not agree: highest and lowest differ by 18 points, and up to 13 is usual. Test again before you trust this figure.',
  );
});

test('says when dishes were joined, and writes large numbers in figures', () => {
  expect(verdict(50, [45, 40, 43, 42, 44, 41, 42, 45])).toMatch(
    /^The eight replicates, joined into four of 100 seeds, agree: highest and lowest differ by 2 points/,
  );
  expect(
    verdict(
      20,
      Array.from({ length: 12 }, () => 18),
    ),
  ).toMatch(/^The 12 replicates agree/);
});

test('shows a range that is no whole number with one decimal', () => {
  expect(verdict(30, [29, 28])).toContain('differ by 3.3 points');
});

test('says why it cannot judge', () => {
  expect(verdict(100, [90])).toMatch(/^There is only one replicate/);
  expect(verdict(9, [9, 2])).toMatch(/^With fewer than 10 seeds in a replicate/);
});
