import { expect, test } from 'vitest';
import {
  MOVEMENT_DIRECTIONS,
  MOVEMENT_REASON_LABELS,
  MOVEMENT_REASONS,
  reasonInWords,
} from '../../../lib/domain/stock/movement-reasons';

test('every reason has a direction and a label of its own', () => {
  for (const reason of MOVEMENT_REASONS) expect(MOVEMENT_DIRECTIONS[reason]).toBeDefined();
  expect(new Set(MOVEMENT_REASONS.map((reason) => MOVEMENT_REASON_LABELS[reason])).size).toBe(MOVEMENT_REASONS.length);
});

test('a count that found what the ledger said is told apart from one that did not', () => {
  expect(reasonInWords('count', 0)).toBe('counted, as expected');
  expect(reasonInWords('count', -3)).toBe('count correction');
  expect(reasonInWords('loss', 0)).toBe('loss');
});
