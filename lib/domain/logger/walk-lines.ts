/**
 * Cuts text that comes in pieces into lines (LF, CR LF or CR), without making a string of each. The last line may lack
 * its end: then it may have been cut in half.
 */

/** A line: text from `from` up to `to`, its number from 1, and whether a line end stood behind it. */
export type OnLine = (text: string, from: number, to: number, line: number, ended: boolean) => void;

export interface LineWalker {
  push(piece: string): void;
  /** What is left when no more comes. */
  finish(): void;
}

/** Checked in tests/domain/logger/walk-lines.test.ts (every cut of a text gives the same lines) */
export function lineWalker(onLine: OnLine): LineWalker {
  let rest = '';
  let line = 0;
  /** Old systems end lines with CR alone; known as soon as a CR is not followed by LF. */
  let end: '\n' | '\r' | null = null;

  function decideEnd(text: string): void {
    const feed = text.indexOf('\n');
    const carriage = text.indexOf('\r');
    if (carriage >= 0 && carriage + 1 < text.length && carriage + 1 !== feed && (feed < 0 || carriage < feed))
      end = '\r';
    else if (feed >= 0) end = '\n';
  }

  function push(piece: string): void {
    const text = rest === '' ? piece : rest + piece;
    if (end === null) decideEnd(text);
    let from = 0;
    if (end !== null) {
      for (let at = text.indexOf(end); at >= 0; at = text.indexOf(end, from)) {
        line += 1;
        onLine(text, from, at > from && text.charCodeAt(at - 1) === 13 ? at - 1 : at, line, true);
        from = at + 1;
      }
    }
    rest = from === 0 ? text : text.slice(from);
  }

  function finish(): void {
    if (rest === '') return;
    line += 1;
    // A lone CR at the very end ends its line.
    const ended = rest.endsWith('\r');
    onLine(rest, 0, ended ? rest.length - 1 : rest.length, line, ended);
    rest = '';
  }
  return { push, finish };
}
