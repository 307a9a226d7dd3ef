import { expect, test } from 'vitest';
import {
  minutesOf,
  optionInWords,
  optionWithChance,
  whyThisTest,
} from '@/app/(bank)/germination/plan/_parts/proposal-words';
import { BELIEF_STEPS } from '@/lib/domain/germination/plan/belief';
import { proposeTest } from '@/lib/domain/germination/plan/propose-test';

/** Surely this viability, to the percent. */
const surely = (percent: number) => Array.from({ length: BELIEF_STEPS }, (_, step) => (step === percent ? 1 : 0));
const propose = (belief: number[] | null, overrides: object = {}) =>
  proposeTest({ belief, line: belief ? 0.8 : null, seedsToSpare: 1000, everTested: true, ...overrides });

test('says in one sentence why a small test is enough', () => {
  expect(whyThisTest(propose(surely(96)))).toBe(
    '40 seeds are enough: this lot is very likely far above its line of 80 %.',
  );
  expect(whyThisTest(propose(surely(40)))).toContain('far below its line of 80 %');
  expect(whyThisTest(propose(surely(97), { everTested: false }))).toBe(
    'Its first test: every later forecast rests on it, so 100 seeds.',
  );
});

test('says how groups go on and when they end', () => {
  expect(whyThisTest(propose(surely(80)))).toMatch(
    /^Near its line of 80 %, .*: set 40 seeds at a time and stop as soon as the count is clear, after about \d+ seeds, \d+ at most\.$/,
  );
});

test('says so when the count will hardly be clear, when nothing can be spared, and when there is no forecast', () => {
  expect(whyThisTest(propose(surely(80), { seedsToSpare: 60 }))).toMatch(
    /^Not enough to be sure: of 100 such tests about \d+ would not be clear\. Only 60 seeds can be spared/,
  );
  expect(whyThisTest(propose(surely(80), { seedsToSpare: 1 }))).toMatch(/^Only one seed can be spared.*Regrow it/);
  expect(whyThisTest(propose(null))).toMatch(/^No forecast/);
});

test('an option says its dishes, its seeds and how often it is clear', () => {
  const { options } = propose(surely(96));
  const [smallest] = options;
  const groups = options.at(-1);
  if (!smallest || groups?.kind !== 'groups') throw new Error('no options');
  expect(optionInWords(smallest)).toBe('2 × 10 = 20 seeds');
  expect(optionWithChance(smallest)).toMatch(/^2 × 10 = 20 seeds, clear in \d+ of 100$/);
  expect(optionWithChance(groups)).toMatch(/^in groups of 40, about 4\d seeds$/);
});

test('work is reckoned from dishes, seeds and days of counting', () => {
  const [smallest] = propose(surely(96)).options;
  if (!smallest) throw new Error('no options');
  const once = minutesOf(smallest, { firstCountDays: null, finalCountDays: 7 });
  const often = minutesOf(smallest, { firstCountDays: 7, finalCountDays: 28 });
  expect(once).toBeLessThan(often ?? 0);
  expect(minutesOf(smallest, null)).toBeNull();
});
