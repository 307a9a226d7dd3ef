import { expect, test } from 'vitest';
import { groupsExample } from '../../../app/(bank)/reference/seeds-to-test/_parts/lot-asked';
import { decisionInWords, planInWords } from '../../../app/(bank)/reference/seeds-to-test/_parts/plan-words';
import { groupsQuestion } from '../../../lib/schemas/calculators/seeds-to-test';

const look = (seedsTested: number, regrowAtMost: number | null, keepAtLeast: number | null) => ({
  seedsTested,
  regrowAtMost,
  keepAtLeast,
});

test('the first look is said as instructions', () => {
  expect(planInWords({ looks: [look(40, 29, 34), look(70, 60, 61)] })).toBe(
    'Test 40. If 34 or more germinate, stop: the lot is above the line. If 29 or fewer do, stop and regrow it. Otherwise test 30 more and look again.',
  );
  expect(planInWords({ looks: [look(40, 29, null), look(80, 64, 65)] })).toBe(
    'Test 40. No count is enough to keep it yet. If 29 or fewer germinate, stop and regrow it. Otherwise test 40 more and look again.',
  );
  expect(planInWords({ looks: [look(40, 34, 35)] })).toBe(
    'Test 40. If 35 or more germinate, the lot is above the line: keep it. If fewer do, regrow it.',
  );
});

test('what to do now names the seeds still to set', () => {
  expect(decisionInWords({ ok: true, decision: 'test-more', seeds: 40, groupBegun: false })).toBe('Test 40 more.');
  expect(decisionInWords({ ok: true, decision: 'test-more', seeds: 30, groupBegun: true })).toContain(
    'complete the group',
  );
  expect(decisionInWords({ ok: false, reason: 'beyond-the-plan', mostSeeds: 400 })).toContain('400');
});

const lot = { number: 'L-2020-001', accessionName: 'Skerry', cropName: 'Leek' };

test.each([
  [null, { line: '85', points: '5', most: '400' }],
  [
    { ...lot, threshold: 0.7225, seedsLeft: 900, seedsNeeded: 700 },
    { line: '72.3', points: '5', most: '200' },
  ],
  [
    { ...lot, threshold: 0.85, seedsLeft: 5000, seedsNeeded: null },
    { line: '85', points: '5', most: '400' },
  ],
  // Too few even for regrowing: all that there are, and the page says that each is missing there.
  [
    { ...lot, threshold: 0.97, seedsLeft: 60, seedsNeeded: 90 },
    { line: '97', points: '1.8', most: '60' },
  ],
])('the form for a lot is filled with its line and what it can spare (%#)', (asked, expected) => {
  const example = groupsExample(asked);
  expect(example).toMatchObject(expected);
  expect(groupsQuestion.safeParse(example).success).toBe(true);
});
