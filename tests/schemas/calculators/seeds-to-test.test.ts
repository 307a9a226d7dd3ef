import { expect, test } from 'vitest';
import { groupsQuestion, oneTestQuestion, widthQuestion } from '../../../lib/schemas/calculators/seeds-to-test';

const GROUPS = { line: '85', points: '5', wrongKeep: '5', wrongRegrow: '5', group: '40', most: '400' };

const refusedAt = (result: { error?: { issues: { path: PropertyKey[] }[] } }) =>
  result.error?.issues.map(({ path }) => path[0]);

test('chances typed of 100 become proportions, and an empty "so far" stays empty', () => {
  const { data } = groupsQuestion.safeParse({ ...GROUPS, wrongKeep: '0,5', tested: '', germinated: ' ' });
  expect(data).toMatchObject({ line: 85, wrongKeep: 0.005, group: 40 });
  expect(data?.tested).toBeUndefined();
});

test('a margin that leaves 0 to 100 %, too many looks, or half an answer is refused at its field', () => {
  expect(groupsQuestion.safeParse({ ...GROUPS, line: '95', points: '4.9' }).success).toBe(true);
  expect(refusedAt(groupsQuestion.safeParse({ ...GROUPS, line: '95' }))).toEqual(['points']);
  expect(groupsQuestion.safeParse({ ...GROUPS, group: '16' }).success).toBe(true);
  expect(refusedAt(groupsQuestion.safeParse({ ...GROUPS, group: '15' }))).toEqual(['group']);
  expect(refusedAt(groupsQuestion.safeParse({ ...GROUPS, tested: '40' }))).toEqual(['germinated']);
  expect(refusedAt(groupsQuestion.safeParse({ ...GROUPS, tested: '40', germinated: '41' }))).toEqual(['germinated']);
  expect(groupsQuestion.safeParse({ ...GROUPS, tested: '40', germinated: '40' }).success).toBe(true);
});

test('a lot must be at least a point above the line to be told from it', () => {
  const asked = { threshold: '85', truly: '86', wrongAbove: '5', missed: '10' };
  expect(oneTestQuestion.safeParse(asked).success).toBe(true);
  expect(refusedAt(oneTestQuestion.safeParse({ ...asked, truly: '85.9' }))).toEqual(['truly']);
});

test('a width is asked with one of the levels, intervals and ways of counting', () => {
  const asked = { expected: '85', within: '5', level: '95', method: 'wilson', basis: 'expected' };
  expect(widthQuestion.safeParse(asked).success).toBe(true);
  for (const wrong of [{ level: '96' }, { method: 'guess' }, { basis: 'narrowest' }, { within: '0' }]) {
    expect(widthQuestion.safeParse({ ...asked, ...wrong }).success).toBe(false);
  }
});
