import { expect, it } from 'vitest';
import {
  agreeInWords,
  changeInWords,
  reportInWords,
  shareInWords,
} from '@/app/(bank)/germination/report/_parts/report-words';

const sums = { tests: 41, lots: 38, seeds: 8200, normal: 6900, comparable: 40, outside: 3, lotsBelow: 2 };

it('says the report in a sentence, with its troubles', () => {
  expect(reportInWords({ sums })).toBe(
    '**41 tests** of 38 lots with 8\u202f200 seeds. In **3 tests** the replicates lay further apart than is tolerated. **2 lots are** more likely below their line than above it today.',
  );
});

it('says so when there is no trouble, and nothing of what nobody could compare', () => {
  expect(reportInWords({ sums: { ...sums, tests: 1, lots: 1, seeds: 1, outside: 0, lotsBelow: 0 } })).toBe(
    '**1 test** of 1 lot with 1 seed. All replicates that could be compared agreed. None of these lots is more likely below its line than above it today.',
  );
  expect(reportInWords({ sums: { ...sums, comparable: 0, outside: 0, lotsBelow: 1 } })).toBe(
    '**41 tests** of 38 lots with 8\u202f200 seeds. **1 lot is** more likely below its line than above it today.',
  );
});

it('never rounds some to none, or not all to all', () => {
  expect(shareInWords(1, 400)).toBe('1 of 400 (under 1 %)');
  expect(shareInWords(399, 400)).toBe('399 of 400 (over 99 %)');
  expect(shareInWords(0, 40)).toBe('0 of 40 (0 %)');
  expect(shareInWords(0, 0)).toBe('none could be compared');
});

it('says how a test stands beside the one before', () => {
  const before = { normal: 90, seeds: 100 };
  expect(changeInWords({ normal: 70, seeds: 100 }, before, false)).toBe('−20 points: differs by more than chance');
  expect(changeInWords({ normal: 182, seeds: 200 }, before, true)).toBe('+1 point: agrees');
});

it('says whether tests and ledger agree, and how they differ', () => {
  const none = { tests: 0, seeds: 0 };
  expect(agreeInWords({ set: 400, notInLedger: none, beyondSet: 0 })).toContain('agree: every seed');
  expect(agreeInWords({ set: 400, notInLedger: { tests: 2, seeds: 150 }, beyondSet: 0 })).toBe(
    'Tests and ledger differ. 150 seeds of 2 tests never went out of the ledger: these tests were written down without taking seed out.',
  );
  expect(agreeInWords({ set: 400, notInLedger: none, beyondSet: 20 })).toContain('20 seeds more went out than was set');
  expect(agreeInWords({ set: 400, notInLedger: none, beyondSet: -1 })).toContain('1 seed more was set than went out');
  expect(agreeInWords({ set: 0, notInLedger: none, beyondSet: 0 })).toContain('No germination test was finished');
});
