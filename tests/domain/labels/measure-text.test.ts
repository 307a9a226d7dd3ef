import path from 'node:path';
import { openSync } from 'fontkit';
import { describe, expect, test } from 'vitest';
import { printableText, textRuns, textWidthMm } from '@/lib/domain/labels/measure-text';

const MM_PER_POINT = 25.4 / 72;
const FONTS = path.resolve('lib/server/labels/fonts');

/** As the PDF sets it: by the font file itself, kerning included. */
function widthInFontMm(text: string, file: string, sizePt: number): number {
  const font = openSync(path.join(FONTS, file));
  return (font.layout(text).advanceWidth / font.unitsPerEm) * sizePt * MM_PER_POINT;
}

describe('widths of text', () => {
  test.each([
    ['Westness Black Kale', 'regular', 'label-regular.ttf'],
    ['Łódź Äpfelgrün ß Señorita é', 'bold', 'label-bold.ttf'],
    ['P-00012 · L-2024-007', 'bold', 'label-bold.ttf'],
    ['Freezer A › Box 7', 'regular', 'label-regular.ttf'],
    ['Капуста', 'regular', 'more-regular.ttf'],
    ['Λάχανο', 'bold', 'more-bold.ttf'],
  ] as const)('%s in %s is as wide as the font file says', (text, weight, file) => {
    const width = textWidthMm(text, 10, weight);
    const inFont = widthInFontMm(text, file, 10);
    // Kerning draws letters together; the layout keeps 2 % for where it spreads them.
    expect(inFont).toBeLessThanOrEqual(width * 1.02);
    expect(inFont).toBeGreaterThan(width * 0.93);
  });

  test('runs change where the font does and are together as wide as the line', () => {
    const runs = textRuns('Kale Капуста', 10, 'regular');
    expect(runs.map(({ face, text }) => [face, text])).toEqual([
      ['label', 'Kale '],
      ['more', 'Капуста'],
    ]);
    expect(runs.reduce((sum, run) => sum + run.widthMm, 0)).toBeCloseTo(textWidthMm('Kale Капуста', 10, 'regular'), 9);
  });
});

describe('printableText', () => {
  test('letters that no label font has become a question mark and are named once', () => {
    expect(printableText('Kale 甘蓝甘')).toEqual({ text: 'Kale ???', missing: ['甘', '蓝'] });
  });

  test('one line, composed letters, no signs that are not seen', () => {
    expect(printableText('Cafe\u0301\n  de\u200B  olla ')).toEqual({ text: 'Café de olla', missing: [] });
  });
});
