/** Cutting and breaking text to a width. `measure` gives the width of a text in mm. */
export type Measure = (text: string) => number;

const ELLIPSIS = '…';

/**
 * Text cut at its end until it fits.
 *
 * @param roomMm  width that there is
 * @returns the text, cut text ending in '…', or '' when not even a letter fits
 * Checked in tests/domain/labels/fit-text.test.ts
 */
export function cutEnd(text: string, roomMm: number, measure: Measure): string {
  return cutTo(text, roomMm, measure, (letters, kept) => `${letters.slice(0, kept).join('').trimEnd()}${ELLIPSIS}`);
}

/**
 * Text cut at its beginning until it fits: the last part of a place says most.
 *
 * @returns the text, cut text beginning with '…', or '' when not even a letter fits
 * Checked in tests/domain/labels/fit-text.test.ts
 */
export function cutStart(text: string, roomMm: number, measure: Measure): string {
  return cutTo(text, roomMm, measure, (letters, kept) =>
    kept === 0 ? ELLIPSIS : `${ELLIPSIS}${letters.slice(-kept).join('').trimStart()}`,
  );
}

/** The most letters with which a cut text fits, found by halving: every letter widens it. */
function cutTo(
  text: string,
  roomMm: number,
  measure: Measure,
  cut: (letters: string[], kept: number) => string,
): string {
  if (measure(text) <= roomMm) return text;
  const letters = [...text];
  let fits = 0;
  let tooMany = letters.length;
  while (tooMany - fits > 1) {
    const middle = Math.floor((fits + tooMany) / 2);
    if (measure(cut(letters, middle)) <= roomMm) fits = middle;
    else tooMany = middle;
  }
  return fits === 0 ? '' : cut(letters, fits);
}

/**
 * Text broken between words, and inside a word that is wider than the room.
 *
 * @param roomMm  width of a line
 * @param most    lines wanted at most: breaking stops after one more
 * @returns lines, each within the room; null when a single letter is wider than it
 * Checked in tests/domain/labels/fit-text.test.ts
 */
export function breakText(text: string, roomMm: number, measure: Measure, most: number): string[] | null {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (measure(longer) <= roomMm) {
      line = longer;
      continue;
    }
    if (line !== '') lines.push(line);
    line = '';
    for (const letter of word) {
      if (lines.length > most) return lines;
      if (line !== '' && measure(line + letter) > roomMm) {
        lines.push(line);
        line = '';
      }
      if (line === '' && measure(letter) > roomMm) return null;
      line += letter;
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/**
 * Text on so many lines at most; what does not fit is cut at the end of the last, if it may be cut.
 *
 * @returns the lines and whether something was cut; null when it does not fit
 * Checked in tests/domain/labels/fit-text.test.ts
 */
export function fitLines(
  text: string,
  roomMm: number,
  most: number,
  measure: Measure,
  mayBeCut: boolean,
): { lines: string[]; cut: boolean } | null {
  const lines = breakText(text, roomMm, measure, most);
  if (!lines) return null;
  if (lines.length <= most) return { lines, cut: false };
  if (!mayBeCut) return null;
  const kept = lines.slice(0, most - 1);
  // Lines were broken at blanks or inside a word; either way the rest begins where the kept lines end.
  const rest = text.slice(kept.reduce((at, line) => skipBlank(text, at) + line.length, 0)).trimStart();
  const last = cutEnd(rest, roomMm, measure);
  return last === '' ? null : { lines: [...kept, last], cut: true };
}

const skipBlank = (text: string, at: number) => (text[at] === ' ' ? at + 1 : at);
