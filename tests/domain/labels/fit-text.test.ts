import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { breakText, cutEnd, cutStart, fitLines } from '@/lib/domain/labels/fit-text';

/** Every letter is a millimetre wide. */
const measure = (text: string) => [...text].length;

describe('cutting', () => {
  test('a text that fits stays whole', () => {
    expect(cutEnd('kale', 4, measure)).toBe('kale');
    expect(cutStart('kale', 4, measure)).toBe('kale');
  });

  test('a name is cut at its end, a place at its beginning', () => {
    expect(cutEnd('Westness Black Kale', 9, measure)).toBe('Westness…');
    expect(cutStart('Freezer A › Box 7', 6, measure)).toBe('…Box 7');
  });

  test('as many letters stay as fit', () => {
    fc.assert(
      fc.property(fc.lorem(), fc.integer({ min: 2, max: 30 }), (text, room) => {
        for (const cut of [cutEnd(text, room, measure), cutStart(text, room, measure)]) {
          expect(measure(cut)).toBeLessThanOrEqual(room);
          // A blank before '…' is dropped, so one letter fewer can stand there.
          expect(measure(cut)).toBeGreaterThanOrEqual(Math.min(measure(text), room - 1));
        }
      }),
    );
  });

  test('nothing remains where not even a letter fits', () => {
    expect(cutEnd('kale', 1, measure)).toBe('');
    expect(cutStart('kale', 1, measure)).toBe('');
  });
});

describe('breaking', () => {
  test('between words, and inside a word that is too wide', () => {
    expect(breakText('Westness Black Kale', 14, measure, 2)).toEqual(['Westness Black', 'Kale']);
    expect(breakText('Kohlrabisalat', 5, measure, 9)).toEqual(['Kohlr', 'abisa', 'lat']);
    expect(breakText('kale', 0.5, measure, 2)).toBeNull();
  });

  test('no letter is lost and no line too wide', () => {
    fc.assert(
      fc.property(fc.lorem({ maxCount: 20 }), fc.integer({ min: 1, max: 40 }), (text, room) => {
        const lines = breakText(text, room, measure, 1000) ?? [];
        expect(lines.join('').replace(/ /g, '')).toBe(text.replace(/ /g, ''));
        for (const line of lines) expect(measure(line)).toBeLessThanOrEqual(room);
      }),
    );
  });

  test('what is more than the lines wanted is cut on the last, unless it may not be', () => {
    expect(fitLines('one two three four', 5, 2, measure, true)).toEqual({ lines: ['one', 'two…'], cut: true });
    expect(fitLines('one two three four', 5, 2, measure, false)).toBeNull();
    expect(fitLines('one two', 5, 2, measure, false)).toEqual({ lines: ['one', 'two'], cut: false });
  });
});
