import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DOT_MM, QUIET_SQUARES, squareSizesMm, squaresAcross } from '@/lib/domain/labels/code-size';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelCells } from '@/lib/domain/labels/label-cells';
import type { LabelDrawing, Rectangle } from '@/lib/domain/labels/label-drawing';
import { layoutLabel } from '@/lib/domain/labels/layout-label';
import { type LabelledPacket, packetLabel } from '@/lib/domain/labels/packet-label';
import { anyCode, labelOfBag, labelOfPacket } from '@/tests/support/labels/label-to-print';

const MM_PER_POINT = 25.4 / 72;
const HAIR = 1e-6;
const INSETS = { left: 1.5, top: 1.5, right: 1.5, bottom: 1.5 };

/** Where the ink of each line of text can be: from the tallest letter to the deepest. */
function inkOf(drawing: LabelDrawing): Rectangle[] {
  return drawing.texts.map(({ xMm, baselineMm, sizePt, runs }) => ({
    xMm,
    yMm: baselineMm - 0.78 * sizePt * MM_PER_POINT,
    widthMm: runs.reduce((sum, run) => sum + run.widthMm, 0),
    heightMm: 1.0 * sizePt * MM_PER_POINT,
  }));
}

/** The code with its quiet zone. */
function codeBox({ code }: LabelDrawing): Rectangle {
  const quiet = QUIET_SQUARES[code.matrix.kind] * code.squareMm;
  const side = squaresAcross(code.matrix) * code.squareMm;
  return { xMm: code.xMm - quiet, yMm: code.yMm - quiet, widthMm: side, heightMm: side };
}

const overlap = (one: Rectangle, other: Rectangle) =>
  one.xMm + one.widthMm > other.xMm + HAIR &&
  other.xMm + other.widthMm > one.xMm + HAIR &&
  one.yMm + one.heightMm > other.yMm + HAIR &&
  other.yMm + other.heightMm > one.yMm + HAIR;

const words = fc.oneof(
  fc.constantFrom(
    'Łódź Äpfelgrün',
    'Капуста чорна',
    'Señorita',
    'Wwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwwww',
    'iii',
    'Ολίγα',
  ),
  fc.string({ minLength: 1, maxLength: 90, unit: 'grapheme-composite' }),
  fc.lorem({ maxCount: 12 }),
);

const anyContent: fc.Arbitrary<LabelledPacket> = fc.record({
  packetNumber: fc.constantFrom('P-00012', 'P-123456'),
  lotNumber: fc.constantFrom('L-2024-007', 'L-2024-12345', 'Holm 19/3 B'),
  accessionName: words,
  cropName: words,
  harvestedOn: fc.constant('2024-09-12'),
  place: fc.option(words),
  germination: fc.option(fc.constant({ germinated: 184, sown: 200, testedOn: '2025-03-14' })),
  treatment: fc.option(words),
  role: fc.constantFrom('active' as const, 'base' as const, 'safety-duplicate' as const),
});

const anyLabel = fc.record({
  content: anyContent,
  code: fc.record({
    kind: fc.constantFrom('qr' as const, 'data-matrix' as const),
    squares: fc.integer({ min: 12, max: 33 }),
  }),
  size: fc.record({
    widthMm: fc.integer({ min: 150, max: 1100 }).map((tenths) => tenths / 10),
    heightMm: fc.integer({ min: 100, max: 800 }).map((tenths) => tenths / 10),
  }),
});

describe('layoutLabel', () => {
  test('words, frames and code stay on the label and off one another; the quiet zone stays blank', () => {
    let laidOut = 0;
    fc.assert(
      fc.property(anyLabel, ({ content, code, size }) => {
        const layout = layoutLabel(
          { text: packetLabel(content, null), code: anyCode(code.kind, code.squares) },
          size,
          INSETS,
        );
        if (!layout.ok) return;
        laidOut += 1;
        const { drawing } = layout;
        const box = codeBox(drawing);
        const ink = inkOf(drawing);
        for (const [index, one] of ink.entries()) {
          expect(overlap(one, box)).toBe(false);
          for (const other of ink.slice(index + 1)) expect(overlap(one, other)).toBe(false);
        }
        for (const frame of drawing.frames) expect(overlap(frame, box)).toBe(false);
        for (const part of [...ink, ...drawing.frames]) {
          expect(part.xMm).toBeGreaterThanOrEqual(INSETS.left - HAIR);
          expect(part.yMm).toBeGreaterThanOrEqual(INSETS.top - HAIR);
          expect(part.xMm + part.widthMm).toBeLessThanOrEqual(size.widthMm - INSETS.right + HAIR);
          expect(part.yMm + part.heightMm).toBeLessThanOrEqual(size.heightMm - INSETS.bottom + HAIR);
        }
        // Placing on whole dots may move the code by less than one.
        expect(box.xMm).toBeGreaterThanOrEqual(INSETS.left - DOT_MM);
        expect(box.yMm).toBeGreaterThanOrEqual(INSETS.top - DOT_MM);
        expect(box.xMm + box.widthMm).toBeLessThanOrEqual(size.widthMm - INSETS.right + HAIR);
        expect(box.yMm + box.heightMm).toBeLessThanOrEqual(size.heightMm - INSETS.bottom + HAIR);
      }),
      { numRuns: 600 },
    );
    expect(laidOut).toBeGreaterThan(200);
  });

  test('numbers and caution are whole, letters at least 6 points, squares whole dots and at least three', () => {
    fc.assert(
      fc.property(anyLabel, ({ content, code, size }) => {
        const layout = layoutLabel(
          { text: packetLabel(content, null), code: anyCode(code.kind, code.squares) },
          size,
          INSETS,
        );
        if (!layout.ok) return;
        const { texts, leftOut, cut, code: placed } = layout.drawing;
        const all = texts
          .map(({ runs }) => runs.map((run) => run.text).join(''))
          .join('')
          .replace(/ /g, '');
        expect(all).toContain(content.packetNumber);
        expect(all).toContain(content.lotNumber.replace(/ /g, ''));
        if (content.treatment !== null) expect(all).toContain('TREATEDSEED:DONOTEAT');
        for (const part of ['name', 'packet number', 'lot number', 'caution'] as const)
          expect(leftOut).not.toContain(part);
        for (const part of ['packet number', 'lot number', 'caution'] as const) expect(cut).not.toContain(part);
        expect(Math.min(...texts.map(({ sizePt }) => sizePt))).toBeGreaterThanOrEqual(6);
        expect(placed.squareMm).toBeGreaterThanOrEqual(0.375);
        expect(placed.squareMm % DOT_MM).toBe(0);
        for (const mm of [placed.xMm, placed.yMm]) expect(mm % DOT_MM).toBe(0);
      }),
      { numRuns: 600 },
    );
  });

  test('a code that would be printed too small is refused, with the room that it needs', () => {
    // 37 squares with the quiet zone of a QR code of version 3, at three dots each
    const layout = layoutLabel(
      { text: labelOfPacket(), code: anyCode('qr', 29) },
      { widthMm: 40, heightMm: 16.8 },
      INSETS,
    );
    expect(layout).toEqual({ ok: false, reason: 'code-too-small', neededMm: 13.875, roomMm: expect.closeTo(13.8) });
    const higher = layoutLabel(
      { text: labelOfPacket(), code: anyCode('qr', 29) },
      { widthMm: 40, heightMm: 16.9 },
      INSETS,
    );
    expect(higher.ok).toBe(true);
  });

  test('a lot number without room is a refusal, not half a number', () => {
    const text = labelOfPacket({ lotNumber: 'W'.repeat(40) });
    const layout = layoutLabel({ text, code: anyCode('qr', 21) }, { widthMm: 30, heightMm: 20 }, INSETS);
    expect(layout).toEqual({ ok: false, reason: 'text-too-long' });
  });

  test.each(COMMON_FORMATS.map((format) => [format.name, format] as const))(
    '%s bears an ordinary label on every place, with name, numbers, harvest and germination',
    (_, format) => {
      for (const cell of labelCells(format)) {
        const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
        const layout = layoutLabel({ text: labelOfPacket(), code: anyCode('qr', 29) }, size, cell.insets);
        if (!layout.ok) throw new Error(`${format.name}: ${layout.reason}`);
        expect(layout.drawing.leftOut).not.toContain('harvest');
        expect(layout.drawing.leftOut).not.toContain('germination');
      }
    },
  );

  test.each(COMMON_FORMATS.map((format) => [format.name, format] as const))(
    '%s bears the longest name and a caution on every place',
    (_, format) => {
      const text = labelOfPacket({ accessionName: 'Sehr lange Sorte '.repeat(10), treatment: 'thiram' });
      for (const cell of labelCells(format)) {
        const size = { widthMm: format.labelWidthMm, heightMm: format.labelHeightMm };
        expect(layoutLabel({ text, code: anyCode('qr', 29) }, size, cell.insets).ok).toBe(true);
      }
    },
  );

  test('a part that shares a line with one that stays is not left out in vain', () => {
    // Treated seed on terms, 50 × 25 mm: not everything fits, but the crop stands beside the harvest.
    const text = labelOfBag({ treatment: 'thiram', onTerms: true });
    const layout = layoutLabel({ text, code: anyCode('qr', 21) }, { widthMm: 50, heightMm: 25 }, INSETS);
    if (!layout.ok) throw new Error(layout.reason);
    const shown = layout.drawing.texts.map(({ runs }) => runs.map((run) => run.text).join(''));
    expect(layout.drawing.leftOut).toContain('bank');
    expect(layout.drawing.leftOut).not.toContain('crop');
    // A smaller code rather than the more needed of two parts.
    expect(layout.drawing.leftOut).not.toContain('germination');
    expect(shown).toContain('kale · harvest 2024');
  });

  test('a tall label has its code below the words', () => {
    const layout = layoutLabel(
      { text: labelOfPacket(), code: anyCode('qr', 21) },
      { widthMm: 30, heightMm: 60 },
      INSETS,
    );
    if (!layout.ok) throw new Error(layout.reason);
    const lowest = Math.max(...layout.drawing.texts.map(({ baselineMm }) => baselineMm));
    expect(layout.drawing.code.yMm).toBeGreaterThan(lowest);
  });
});

describe('squareSizesMm', () => {
  test('whole dots of a 203 dpi printer, three to five, largest first', () => {
    expect(squareSizesMm(anyCode('qr', 21), 30)).toEqual([0.625, 0.5, 0.375]);
    expect(squareSizesMm(anyCode('qr', 21), 29 * 0.5)).toEqual([0.5, 0.375]);
    expect(squareSizesMm(anyCode('qr', 21), 29 * 0.375)).toEqual([0.375]);
    expect(squareSizesMm(anyCode('qr', 21), 29 * 0.375 - 0.01)).toEqual([]);
  });

  test('the quiet zone is four squares round a QR code and two round a Data Matrix', () => {
    expect(squaresAcross(anyCode('qr', 21))).toBe(29);
    expect(squaresAcross(anyCode('data-matrix', 12))).toBe(16);
  });
});
