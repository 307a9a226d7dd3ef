import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { labelsPerPage } from '@/lib/domain/labels/label-format';
import { labelledOnPage, layoutPage, pageCount } from '@/lib/domain/labels/layout-pages';
import { anyCode, labelOfPacket } from '@/tests/support/labels/label-to-print';

const sheet = COMMON_FORMATS.find(({ key }) => key === 'a4-24');
if (!sheet) throw new Error('no sheet');
const usual = { start: 1, copies: 1, shiftXMm: 0, shiftYMm: 0 };

describe('a print run', () => {
  test('every packet gets its copies, one after the other, and the labels before the start stay blank', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        fc.integer({ min: 1, max: 5 }),
        fc.integer({ min: 1, max: 24 }),
        (packets, copies, start) => {
          const run = { ...usual, copies, start };
          const pages = pageCount(sheet, packets, run);
          const places = Array.from({ length: pages }, (_, page) => labelledOnPage(sheet, packets, run, page)).flat();
          expect(places).toHaveLength(pages * labelsPerPage(sheet));
          expect(places.slice(0, start - 1).every((place) => place === null)).toBe(true);
          const wanted = Array.from({ length: packets }, (_, packet) => Array.from({ length: copies }, () => packet));
          expect(places.filter((place) => place !== null)).toEqual(wanted.flat());
          expect(places[start - 1]).toBe(0);
          // No sheet too many.
          expect(places.slice(-labelsPerPage(sheet)).some((place) => place !== null)).toBe(true);
        },
      ),
    );
  });

  test('labels stand where the sheet has them, moved by what the printer is out', () => {
    const label = { text: labelOfPacket(), code: anyCode('qr', 21) };
    const laid = layoutPage(sheet, [null, label, null, label], { shiftXMm: 1.5, shiftYMm: -0.5 });
    if (!laid.ok) throw new Error(laid.problem.reason);
    expect(laid.page.labels.map(({ xMm, yMm }) => [xMm, yMm])).toEqual([
      [71.5, 0],
      [1.5, 37],
    ]);
    expect(laid.page).toMatchObject({ widthMm: 210, heightMm: 297 });
  });

  test('a label that cannot be printed is named', () => {
    const text = labelOfPacket({ packetNumber: 'P-00077' });
    const small = { ...sheet, labelHeightMm: 12 };
    expect(layoutPage(small, [{ text, code: anyCode('qr', 29) }], usual)).toMatchObject({
      ok: false,
      called: 'P-00077',
      problem: { reason: 'code-too-small' },
    });
  });
});
