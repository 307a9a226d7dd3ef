import type { CodeMatrix } from './code-size';
import type { LabelPart } from './label-text';
import type { TextRun, Weight } from './measure-text';

/** Everything that is drawn on one label, mm from the label's upper left corner. PDF and preview draw the same. */
export interface LabelDrawing {
  texts: PlacedText[];
  code: PlacedCode;
  /** frames round cautions */
  frames: Rectangle[];
  /** parts for which there was no room */
  leftOut: LabelPart[];
  /** parts that end in '…' or begin with it */
  cut: LabelPart[];
  /** letters that no label font has, shown as '?' */
  missing: string[];
}

export interface PlacedText {
  part: LabelPart;
  xMm: number;
  baselineMm: number;
  sizePt: number;
  weight: Weight;
  runs: TextRun[];
}

export interface PlacedCode {
  /** corner of the first dark square: the quiet zone lies outside */
  xMm: number;
  yMm: number;
  squareMm: number;
  matrix: CodeMatrix;
}

export interface Rectangle {
  xMm: number;
  yMm: number;
  widthMm: number;
  heightMm: number;
}
