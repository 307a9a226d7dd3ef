/**
 * Some lines of a long file to guess its layout from: the beginning whole, then ever fewer, evenly spread, so that
 * months and years show however long the file is.
 */
import { lineWalker } from './walk-lines';

export interface SampleLine {
  line: number;
  text: string;
}

export interface LineSample {
  /** the first lines, one after the other */
  head: SampleLine[];
  /** later ones, in order, with as many left out between them */
  spread: SampleLine[];
  lines: number;
}

const HEAD_LINES = 600;
const MOST_SPREAD = 1000;
const LONGEST_LINE = 2000;

/** Checked in tests/domain/logger/guess-logger.test.ts */
export function lineSampler(): { push(piece: string): void; finish(): LineSample } {
  const head: SampleLine[] = [];
  let spread: SampleLine[] = [];
  let stride = 1;
  let lines = 0;
  const walker = lineWalker((text, from, to, line) => {
    lines = line;
    const take = () => ({ line, text: text.slice(from, Math.min(to, from + LONGEST_LINE)) });
    if (line <= HEAD_LINES) head.push(take());
    else if (line % stride === 0) {
      spread.push(take());
      if (spread.length > MOST_SPREAD) {
        stride *= 2;
        spread = spread.filter((sample) => sample.line % stride === 0);
      }
    }
  });
  return {
    push: walker.push,
    finish: () => {
      walker.finish();
      return { head, spread, lines };
    },
  };
}
