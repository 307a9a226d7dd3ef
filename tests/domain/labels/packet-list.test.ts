import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { MOST_PACKETS, readPacketList, writePacketList } from '@/lib/domain/labels/packet-list';

describe('a list of packets in an address', () => {
  test('is read as people write it and as pages do', () => {
    expect(readPacketList('P-00012,P-00013, p-14')).toEqual(['P-00012', 'P-00013', 'P-00014']);
    expect(readPacketList('12-14.95')).toEqual(['P-00012', 'P-00013', 'P-00014', 'P-00095']);
    expect(readPacketList('P-123456')).toEqual(['P-123456']);
  });

  test('numbers in a row become a range', () => {
    expect(writePacketList(['P-00014', 'P-00012', 'P-00013', 'P-00095', 'P-00012'])).toBe('12-14.95');
    expect(writePacketList([])).toBe('');
  });

  test('what is written is read as the same packets', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 3000 }), { maxLength: 500 }), (running) => {
        const numbers = running.sort((one, other) => one - other).map((value) => `P-${String(value).padStart(5, '0')}`);
        expect(readPacketList(writePacketList(numbers))).toEqual(numbers);
      }),
    );
  });

  test('nonsense is passed over, and a range without end does not stop the server', () => {
    expect(readPacketList('kale, 80-12, -, P-x, 7')).toEqual(['P-00007']);
    expect(readPacketList('1-999999999')).toHaveLength(MOST_PACKETS);
  });
});
