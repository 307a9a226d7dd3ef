import LETTER_WIDTHS from './letter-widths.json';

/**
 * How wide text comes out in the two label fonts (lib/server/labels/fonts): 'label' is the app's own face, 'more' has
 * letters that it lacks. Widths are those of the font files; kerning, which mostly draws letters together, is left out.
 */
export type Weight = 'regular' | 'bold';
export type Face = 'label' | 'more';

export interface TextRun {
  face: Face;
  text: string;
  widthMm: number;
}

const MM_PER_POINT = 25.4 / 72;
const EM = 1000;
/** Stands for a letter that neither font has. */
const UNKNOWN = '?';

const tables: Record<Face, Record<Weight, ReadonlyMap<number, number>>> = {
  label: { regular: unpack(LETTER_WIDTHS.label.regular), bold: unpack(LETTER_WIDTHS.label.bold) },
  more: { regular: unpack(LETTER_WIDTHS.more.regular), bold: unpack(LETTER_WIDTHS.more.bold) },
};

/** Runs of [first code point, width, width ...] as a table. */
function unpack(runs: number[][]): Map<number, number> {
  return new Map(
    runs.flatMap(([first = 0, ...widths]) => widths.map((width, index) => [first + index, width] as const)),
  );
}

function faceOf(letter: string): Face | null {
  const point = letter.codePointAt(0) ?? 0;
  if (tables.label.regular.has(point)) return 'label';
  return tables.more.regular.has(point) ? 'more' : null;
}

/**
 * Text as a label can bear it: one line, composed letters, and '?' for a letter that neither font has.
 *
 * @returns the text, and the letters that had to be replaced, each once
 * Checked in tests/domain/labels/measure-text.test.ts
 */
export function printableText(text: string): { text: string; missing: string[] } {
  const missing = new Set<string>();
  const letters = [...text.normalize('NFC').replace(/\s+/g, ' ').trim()].map((letter) => {
    if (faceOf(letter)) return letter;
    // Signs that are not seen (joiners, marks of direction) are left out, not replaced.
    if (/\p{Cf}|\p{Cc}/u.test(letter)) return '';
    missing.add(letter);
    return UNKNOWN;
  });
  return { text: letters.join(''), missing: [...missing] };
}

/**
 * Text taken apart where the font changes.
 *
 * @param text    as printableText gives it
 * @param sizePt  height of the font, points (1/72 inch)
 * @returns runs from left to right with their widths in mm
 * Checked in tests/domain/labels/measure-text.test.ts
 */
export function textRuns(text: string, sizePt: number, weight: Weight): TextRun[] {
  const runs: TextRun[] = [];
  for (const letter of text) {
    const face = faceOf(letter) ?? 'label';
    const widthMm = (widthInEm(letter, face, weight) * sizePt * MM_PER_POINT) / EM;
    const last = runs.at(-1);
    if (last?.face === face) {
      last.text += letter;
      last.widthMm += widthMm;
    } else {
      runs.push({ face, text: letter, widthMm });
    }
  }
  return runs;
}

/** Width of a line of text, mm. */
export function textWidthMm(text: string, sizePt: number, weight: Weight): number {
  let em = 0;
  for (const letter of text) em += widthInEm(letter, faceOf(letter) ?? 'label', weight);
  return (em * sizePt * MM_PER_POINT) / EM;
}

function widthInEm(letter: string, face: Face, weight: Weight): number {
  const table = tables[face][weight];
  return table.get(letter.codePointAt(0) ?? 0) ?? table.get(UNKNOWN.charCodeAt(0)) ?? EM;
}
