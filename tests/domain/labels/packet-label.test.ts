import { expect, test } from 'vitest';
import { labelOfPacket } from '@/tests/support/labels/label-to-print';

test('a label says name, numbers, crop, harvest, germination with seeds and date, place and purpose', () => {
  expect(labelOfPacket().lines.map(({ text }) => text)).toEqual([
    'Westness Black Kale',
    'P-00012',
    'L-2024-007',
    'kale',
    'harvest 2024',
    'germ. 92 % of 200, 2025-03-14',
    'Seed room › Freezer A › Box 7',
    'active stock',
  ]);
});

test('treated seed bears its caution before everything that can be left out', () => {
  const parts = labelOfPacket({ treatment: 'thiram' }).lines.map(({ part }) => part);
  expect(parts.slice(0, 5)).toEqual(['name', 'packet number', 'lot number', 'caution', 'treatment']);
});

test('what is not known leaves no empty line', () => {
  const { lines } = labelOfPacket({ germination: null, place: null });
  expect(lines.map(({ part }) => part)).not.toContain('germination');
  expect(lines.map(({ part }) => part)).not.toContain('place');
});

test('letters that cannot be printed are told, from whichever line', () => {
  expect(labelOfPacket({ accessionName: '甘蓝', place: 'Box 七' }).missing).toEqual(['甘', '蓝', '七']);
});
