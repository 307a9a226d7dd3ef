import { expect, test } from 'vitest';
import { codeLeadsTo } from '@/app/(bank)/t/_parts/code-leads-to';

test('an open tray is counted at the bench by those who may, and looked at by the others', () => {
  expect(codeLeadsTo('T-0204', 'open', true)).toBe('/bench#T-0204');
  expect(codeLeadsTo('T-0204', 'open', false)).toBe('/germination/T-0204');
});

test.each(['closed', 'given-up', 'finished'] as const)('a test that is %s is never counted again', (status) => {
  expect(codeLeadsTo('T-0204', status, true)).toBe('/germination/T-0204');
});
