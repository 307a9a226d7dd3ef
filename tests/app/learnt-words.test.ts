import { expect, test } from 'vitest';
import { learntInWords } from '@/app/(bank)/germination/[number]/_parts/learnt-words';
import type { Belief } from '@/lib/server/queries/what-was-learnt';

const belief = (more: Partial<Belief>): Belief => ({
  viability: { median: 0.85, lower: 0.6, upper: 0.96 },
  threshold: 0.8,
  chanceBelow: 0.3,
  nextTestOn: '2027-03-01',
  lastSafeSeason: 2029,
  ...{ lastSafeDay: null, curve: [], table: [] },
  ...more,
});
const NOW = belief({
  viability: { median: 0.9, lower: 0.85, upper: 0.94 },
  chanceBelow: 0.001,
  nextTestOn: '2031-05-01',
  lastSafeSeason: 'beyond horizon',
});

test('says chance, band, next test and last safe season, before and now', () => {
  expect(learntInWords({ before: belief({}), now: NOW, isNewest: true })).toBe(
    'The chance that the lot is below its line of 80 % was 30 in 100 before this test; now it is **under 1 in 100**. ' +
      'What the forecast leaves open narrowed from 60–96 % to 85–94 %. ' +
      'The next test moves from 1 Mar 2027 to **1 May 2031**. ' +
      'The last safe season was 2029; it is **generations away**.',
  );
});

test('of an earlier test it compares without and with, never before and now', () => {
  const said = learntInWords({ before: belief({}), now: NOW, isNewest: false });
  expect(said).toMatch(/30 in 100 without this test; with this test it is \*\*under 1 in 100/);
  expect(said).not.toMatch(/before this test|now/);
});

test('a test that taught nothing says so, and a line that moved is named twice', () => {
  const same = learntInWords({ before: belief({}), now: belief({}), isNewest: true });
  expect(same).toMatch(/^The chance that the lot is below its line of 80 % stays \*\*30 in 100\*\*\./);
  expect(same).toMatch(/hardly changed: 60–96 %/);
  expect(same).toMatch(/The next test stays on 1 Mar 2027. The last safe season is the same: 2029/);
  expect(learntInWords({ before: belief({}), now: belief({ threshold: 0.83 }), isNewest: true })).toMatch(
    /its line \(80 %, now 83 %\)/,
  );
  expect(
    learntInWords({ before: belief({ nextTestOn: null }), now: belief({ nextTestOn: null }), isNewest: true }),
  ).toMatch(/No further test is worth its seed\./);
});
