import { cutStart, fitLines, type Measure } from './fit-text';
import type { PlacedText, Rectangle } from './label-drawing';
import { LABEL_PARTS, type LabelLine, type LabelPart, NEEDED_PARTS } from './label-text';
import { textRuns, textWidthMm, type Weight } from './measure-text';

/** The words of one label set into a rectangle. */
export interface TextBlock {
  texts: PlacedText[];
  frames: Rectangle[];
  leftOut: LabelPart[];
  cut: LabelPart[];
}

/** Sizes tried, points. Below 6 nobody reads a label at arm's length. Status: common practice. */
const SIZES_PT = [13, 12, 11, 10, 9.5, 9, 8.5, 8, 7.5, 7, 6.5, 6] as const;
const LEAST_PT = 6;
/** The name stands out, and on a dish its number, except where there is hardly room for it. */
const LARGE_NAME = { times: 1.3, lines: 2 };
const SMALL_NAME = { times: 1, lines: 2 };
const SHORT_NAME = { times: 1, lines: 1 };
type NameStyle = typeof LARGE_NAME;
const LINE_TIMES = 1.18;
/** From the top of a line to its baseline, as a share of its height. */
const BASELINE_SHARE = 0.78;
const MM_PER_POINT = 25.4 / 72;
/** Room kept for kerning that spreads letters, and for a printer's own rounding. */
const WIDTH_KEPT = 0.98;
const FRAME_GAP_MM = 0.5;
const FRAME_LINE_MM = 0.25;

const MOST_LINES: Partial<Record<LabelPart, number>> = {
  'lot number': 2,
  caution: 3,
  terms: 2,
  germination: 2,
};
const MOST_PLACE_LINES = 2;
const LARGE: readonly LabelPart[] = ['name', 'test number'];
const BOLD: readonly LabelPart[] = ['name', 'test number', 'dish', 'packet number', 'caution'];

/**
 * Sets lines as large as they all fit. At the least size, names, places and treatments are cut and then parts left out, the
 * least needed first; numbers and cautions are never cut.
 *
 * @param lines  from top to bottom
 * @param room   where they may stand, mm
 * @returns null when the name, the numbers and the caution do not fit at the least size
 * Checked in tests/domain/labels/layout-label.test.ts
 */
export function fitTextBlock(lines: readonly LabelLine[], room: Rectangle): TextBlock | null {
  const fitted = (kept: readonly LabelLine[], sizePt: number, name: NameStyle, mayCut: boolean) => {
    const rows = setLines(kept, sizePt, room.widthMm, name, mayCut);
    return rows && heightMm(rows) <= room.heightMm ? rows : null;
  };
  for (const sizePt of SIZES_PT) {
    const rows = fitted(lines, sizePt, LARGE_NAME, false);
    if (rows) return place(rows, [], room);
  }
  const fittedSmall = (kept: readonly LabelLine[]) =>
    fitted(kept, LEAST_PT, LARGE_NAME, true) ?? fitted(kept, LEAST_PT, SMALL_NAME, true);
  const leftOut: LabelPart[] = [];
  const givingWay = [...LABEL_PARTS].reverse().filter((part) => !NEEDED_PARTS.includes(part));
  const kept = () => lines.filter((line) => !leftOut.includes(line.part));
  let rows = fittedSmall(lines);
  for (const part of givingWay) {
    if (rows) break;
    if (!lines.some((line) => line.part === part)) continue;
    leftOut.push(part);
    rows = fittedSmall(kept());
  }
  rows ??= fitted(kept(), LEAST_PT, SHORT_NAME, true);
  if (!rows) return null;
  // What went in vain, because it shares a line or is shorter than what had to go after it, comes back.
  for (const part of [...leftOut].reverse()) {
    const without = leftOut.splice(leftOut.indexOf(part), 1);
    const back = fittedSmall(kept());
    if (back) rows = back;
    else leftOut.push(...without);
  }
  return place(rows, leftOut, room);
}

interface Row {
  part: LabelPart;
  text: string;
  sizePt: number;
  weight: Weight;
  cut: boolean;
  framed: 'first' | 'middle' | 'last' | 'only' | null;
}

/** Numbers, amounts and cautions are whole or not there. */
const NEVER_CUT: readonly LabelPart[] = [
  'test number',
  'dish',
  'packet number',
  'lot number',
  'caution',
  'terms',
  'counts',
  'set on',
  'seeds',
  'request',
];

/** Every line broken to the width; null when one does not fit at this size and may not be cut. */
function setLines(
  lines: readonly LabelLine[],
  sizePt: number,
  widthMm: number,
  name: NameStyle,
  mayCut: boolean,
): Row[] | null {
  const rows: Row[] = [];
  for (const { part, text } of joinShort(lines, sizePt, widthMm, name)) {
    const weight = BOLD.includes(part) ? 'bold' : 'regular';
    const ownPt = LARGE.includes(part) ? sizePt * name.times : sizePt;
    const roomMm = widthMm * WIDTH_KEPT - (part === 'caution' ? 2 * (FRAME_GAP_MM + FRAME_LINE_MM) : 0);
    const measure = (piece: string) => textWidthMm(piece, ownPt, weight);
    const most = part === 'name' ? name.lines : (MOST_LINES[part] ?? 1);
    const fitted =
      part === 'place'
        ? fitPlace(text, roomMm, measure, mayCut)
        : fitLines(text, roomMm, most, measure, mayCut && !NEVER_CUT.includes(part));
    if (!fitted) return null;
    fitted.lines.forEach((line, index) => {
      const framed = part === 'caution' ? frameSide(index, fitted.lines.length) : null;
      rows.push({ part, text: line, sizePt: ownPt, weight, cut: fitted.cut, framed });
    });
  }
  return rows;
}

/** On two lines if it fits so; otherwise its end, which says most: '…› Box 7'. */
function fitPlace(text: string, roomMm: number, measure: Measure, mayBeCut: boolean) {
  const whole = fitLines(text, roomMm, MOST_PLACE_LINES, measure, false);
  if (whole || !mayBeCut) return whole;
  const end = cutStart(text, roomMm, measure);
  return end === '' ? null : { lines: [end], cut: true };
}

function frameSide(index: number, count: number): Row['framed'] {
  if (count === 1) return 'only';
  if (index === 0) return 'first';
  return index === count - 1 ? 'last' : 'middle';
}

const PAIRS: readonly (readonly [LabelPart, LabelPart])[] = [
  ['test number', 'dish'],
  ['packet number', 'lot number'],
  ['set on', 'temperature'],
  ['crop', 'harvest'],
  ['request', 'bank'],
];

/** What belongs together shares a line where it is wide enough. */
function joinShort(lines: readonly LabelLine[], sizePt: number, widthMm: number, name: NameStyle): LabelLine[] {
  const joined: LabelLine[] = [];
  for (const line of lines) {
    const last = joined.at(-1);
    const belongs = PAIRS.some(([first, second]) => last?.part === first && line.part === second);
    const together = last && `${last.text} · ${line.text}`;
    const weight = last && BOLD.includes(last.part) ? 'bold' : 'regular';
    const ownPt = last && LARGE.includes(last.part) ? sizePt * name.times : sizePt;
    if (belongs && together && textWidthMm(together, ownPt, weight) <= widthMm * WIDTH_KEPT) {
      joined[joined.length - 1] = { part: last.part, text: together };
    } else {
      joined.push(line);
    }
  }
  return joined;
}

const lineMm = (row: Row) => row.sizePt * LINE_TIMES * MM_PER_POINT;
const aboveMm = (row: Row) => (row.framed === 'first' || row.framed === 'only' ? FRAME_GAP_MM + FRAME_LINE_MM : 0);
const belowMm = (row: Row) => (row.framed === 'last' || row.framed === 'only' ? FRAME_GAP_MM + FRAME_LINE_MM : 0);

const heightMm = (rows: readonly Row[]) =>
  rows.reduce((sum, row) => sum + aboveMm(row) + lineMm(row) + belowMm(row), 0);

/** Half way down the room. */
function place(rows: readonly Row[], leftOut: LabelPart[], room: Rectangle): TextBlock {
  let yMm = room.yMm + (room.heightMm - heightMm(rows)) / 2;
  const texts: PlacedText[] = [];
  const frames: Rectangle[] = [];
  const cut = new Set<LabelPart>();
  let frameTopMm = yMm;
  for (const row of rows) {
    if (row.cut) cut.add(row.part);
    if (aboveMm(row) > 0) frameTopMm = yMm;
    yMm += aboveMm(row);
    const indentMm = row.framed ? FRAME_GAP_MM + FRAME_LINE_MM : 0;
    texts.push({
      part: row.part,
      xMm: room.xMm + indentMm,
      baselineMm: yMm + lineMm(row) * BASELINE_SHARE,
      sizePt: row.sizePt,
      weight: row.weight,
      runs: textRuns(row.text, row.sizePt, row.weight),
    });
    yMm += lineMm(row) + belowMm(row);
    if (belowMm(row) > 0) frames.push(frameRound(texts, room, frameTopMm, yMm));
  }
  return { texts, frames, leftOut, cut: [...cut] };
}

/** As wide as its widest line. */
function frameRound(texts: readonly PlacedText[], room: Rectangle, topMm: number, bottomMm: number): Rectangle {
  const widest = Math.max(
    ...texts
      .filter(({ part }) => part === 'caution')
      .map(({ runs }) => runs.reduce((sum, run) => sum + run.widthMm, 0)),
  );
  return {
    xMm: room.xMm + FRAME_LINE_MM / 2,
    yMm: topMm + FRAME_LINE_MM / 2,
    widthMm: widest + 2 * FRAME_GAP_MM + FRAME_LINE_MM,
    heightMm: bottomMm - topMm - FRAME_LINE_MM,
  };
}
