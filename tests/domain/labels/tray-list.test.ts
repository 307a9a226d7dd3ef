import { expect, test } from 'vitest';
import { MOST_TRAYS, readTrayList } from '@/lib/domain/labels/tray-list';

test('numbers of tests are read as people write them, each once, in their order', () => {
  expect(readTrayList('T-0205,T-0204, t204; t-205 T-12345')).toEqual(['T-0205', 'T-0204', 'T-12345']);
});

test('what is no test is passed over, and a list without end does not stop the server', () => {
  expect(readTrayList('kale, P-00012, , L-2024-007, T-7')).toEqual(['T-0007']);
  const many = Array.from({ length: MOST_TRAYS + 1 }, (_, index) => `T-${index + 1}`).join(',');
  expect(readTrayList(many)).toHaveLength(MOST_TRAYS);
});
