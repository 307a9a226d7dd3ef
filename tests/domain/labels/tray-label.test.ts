import { describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelCells } from '@/lib/domain/labels/label-cells';
import { NEEDED_PARTS } from '@/lib/domain/labels/label-text';
import { layoutLabel } from '@/lib/domain/labels/layout-label';
import { anyCode, FULLEST_DISH, labelOfDish } from '@/tests/support/labels/label-to-print';

const words = (label: ReturnType<typeof labelOfDish>) => label.lines.map(({ text }) => text);

describe('the label of a dish', () => {
  test('says which dish of which test it is, what lies in it, and when it is counted', () => {
    expect(words(labelOfDish())).toEqual([
      'T-0204',
      'dish 2 of 4',
      'Westness Black Kale',
      'L-2024-007',
      'count 2026-11-23, last 2026-12-02',
      'set 2026-11-18',
      '20–30 °C',
      '50 seeds',
      'kale',
      'incubator 1, shelf 2',
    ]);
  });

  test('its code names the tray and the dish: by number, or by an address that opens it at the bench', () => {
    expect(labelOfDish().codeText).toBe('T-0204-2');
    expect(labelOfDish({ dish: 1 }, 'https://seedroom.example/').codeText).toBe('https://seedroom.example/t/T-0204-1');
  });

  test('a single day of counting is said once, and what nobody knows leaves no line', () => {
    const label = labelOfDish({ firstCountOn: '2026-12-02', temperatures: null, place: null });
    expect(words(label)).toContain('count 2026-12-02');
    expect(label.lines.map(({ part }) => part)).not.toContain('temperature');
  });

  test('temperatures bear their unit; the bank’s own words are printed as they are', () => {
    const printed = (temperatures: string) => words(labelOfDish({ temperatures }))[6];
    expect(printed('20-30; 20')).toBe('20–30 °C or 20 °C');
    expect(printed('15 °C')).toBe('15 °C');
    expect(printed('room')).toBe('room');
  });

  test('treated seed is marked: it is touched at every count', () => {
    const label = labelOfDish({ treatment: 'thiram' });
    expect(words(label)[4]).toBe('TREATED SEED: WEAR GLOVES');
    expect(words(label)).toContain('thiram');
  });

  // An address of a bank as the code of a dish: 33 squares with M, a Data Matrix of 26.
  for (const [kind, squares] of [
    ['qr', 33],
    ['data-matrix', 26],
  ] as const) {
    test(`on every common format the numbers, the dish and the caution find room beside a ${kind} code`, () => {
      for (const format of COMMON_FORMATS) {
        if (kind === 'qr' && format.key === 'a4-65') continue; // said before printing: choose a Data Matrix
        const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
        for (const cell of labelCells(format)) {
          const layout = layoutLabel(
            { text: labelOfDish(FULLEST_DISH), code: anyCode(kind, squares) },
            size,
            cell.insets,
          );
          if (!layout.ok) throw new Error(`${format.name}: ${layout.reason}`);
          expect(layout.drawing.leftOut.filter((part) => NEEDED_PARTS.includes(part))).toEqual([]);
          const numbers = layout.drawing.texts.flatMap(({ runs }) => runs.map(({ text }) => text)).join(' ');
          expect(numbers, format.name).toContain('T-12345');
          expect(numbers, format.name).toContain('dish 12 of 16');
        }
      }
    });
  }
});
