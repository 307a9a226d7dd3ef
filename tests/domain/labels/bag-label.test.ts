import { describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelCells } from '@/lib/domain/labels/label-cells';
import { NEEDED_PARTS } from '@/lib/domain/labels/label-text';
import { layoutLabel } from '@/lib/domain/labels/layout-label';
import { anyCode, FULLEST_BAG, labelOfBag } from '@/tests/support/labels/label-to-print';

const words = (label: ReturnType<typeof labelOfBag>) => label.lines.map(({ text }) => text);

describe('the label of a bag that goes out', () => {
  test('says what the recipient must know, from name to bank, and names no packet and no place', () => {
    const label = labelOfBag();
    expect(words(label)).toEqual([
      'Westness Black Kale',
      'L-2024-007',
      'kale',
      'harvest 2024',
      '120 seeds · 0.42 g',
      'germ. 92 % of 200, 2025-03-14',
      'request R-0001',
      'Brannasay Seed Bank',
    ]);
    const parts = label.lines.map(({ part }) => part);
    for (const part of ['packet number', 'place', 'role'] as const) expect(parts).not.toContain(part);
  });

  test('its code names the lot: by number, or by an address that opens it', () => {
    expect(labelOfBag().codeText).toBe('L-2024-007');
    expect(labelOfBag({}, 'https://seedroom.example/').codeText).toBe('https://seedroom.example/l/L-2024-007');
  });

  test('treated seed is called neither food nor feed, and by its substance, right below the number', () => {
    expect(words(labelOfBag({ treatment: 'thiram' })).slice(1, 4)).toEqual([
      'L-2024-007',
      'TREATED SEED: NOT FOR FOOD, FEED OR OIL',
      'thiram',
    ]);
  });

  test('terms are marked where there are some', () => {
    expect(words(labelOfBag({ onTerms: true }))).toContain('on terms: see list');
    expect(words(labelOfBag()).join()).not.toContain('terms');
  });

  test('one seed is one seed; without a weight there are no grams, without a count no line', () => {
    expect(words(labelOfBag({ seeds: 1, grams: null }))).toContain('1 seed');
    expect(labelOfBag({ seeds: null, grams: null }).lines.map(({ part }) => part)).not.toContain('seeds');
    expect(labelOfBag({ germination: null }).lines.map(({ part }) => part)).not.toContain('germination');
  });
});

test.each(COMMON_FORMATS.map((format) => [format.name, format] as const))(
  '%s bears name, number, caution and terms of the fullest bag on every place, and the whole of an ordinary bag’s facts',
  (_, format) => {
    const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
    // A QR code of version 4: an address with a long lot number.
    const code = anyCode('qr', 33);
    for (const cell of labelCells(format)) {
      const fullest = layoutLabel({ text: labelOfBag(FULLEST_BAG), code }, size, cell.insets);
      if (!fullest.ok) throw new Error(`${format.name}: ${fullest.reason}`);
      const { texts, leftOut, cut } = fullest.drawing;
      const shown = texts
        .map(({ runs }) => runs.map(({ text }) => text).join(''))
        .join(' ')
        .replace(/\s+/g, ' ');
      for (const whole of ['L-2024-0123', 'TREATED SEED: NOT FOR FOOD, FEED OR OIL', 'on terms: see list']) {
        expect(shown).toContain(whole);
      }
      for (const part of NEEDED_PARTS) expect(leftOut).not.toContain(part);
      for (const part of ['lot number', 'caution', 'terms', 'seeds', 'request'] as const)
        expect(cut).not.toContain(part);
      const ordinary = layoutLabel({ text: labelOfBag(), code }, size, cell.insets);
      if (!ordinary.ok) throw new Error(`${format.name}: ${ordinary.reason}`);
      for (const part of ['harvest', 'germination', 'seeds'] as const) {
        expect(ordinary.drawing.leftOut).not.toContain(part);
      }
    }
  },
);
