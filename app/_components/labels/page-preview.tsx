import { darkRuns } from '@/lib/domain/labels/dark-runs';
import { labelCells } from '@/lib/domain/labels/label-cells';
import type { LabelDrawing, PlacedCode } from '@/lib/domain/labels/label-drawing';
import type { LabelFormat } from '@/lib/domain/labels/label-format';
import type { LabelPage } from '@/lib/domain/labels/layout-pages';

const MM_PER_POINT = 25.4 / 72;

interface Props {
  format: LabelFormat;
  page: LabelPage;
  /** what it shows, for those who cannot see it */
  called: string;
}

/** A page as it will come out of the printer, from the same drawing; dashed lines are where the labels are cut. */
export function PagePreview({ format, page, called }: Props) {
  return (
    <svg
      role="img"
      aria-label={called}
      viewBox={`0 0 ${page.widthMm} ${page.heightMm}`}
      className="block h-auto w-full border border-rule"
      // Paper is white and ink black, whatever the screen's colours.
      style={{ background: 'white', color: 'black' }}
    >
      {labelCells(format).map(({ xMm, yMm }) => (
        <rect
          key={`${xMm} ${yMm}`}
          x={xMm}
          y={yMm}
          width={format.labelWidthMm}
          height={format.labelHeightMm}
          fill="none"
          stroke="#999"
          strokeWidth={0.2}
          strokeDasharray="1 1"
        />
      ))}
      {page.labels.map(({ xMm, yMm, drawing }) => (
        <g key={`${xMm} ${yMm}`} transform={`translate(${round(xMm)} ${round(yMm)})`}>
          <Label drawing={drawing} />
        </g>
      ))}
    </svg>
  );
}

function Label({ drawing }: { drawing: LabelDrawing }) {
  return (
    <>
      <path d={codePath(drawing.code)} fill="black" />
      {drawing.frames.map((frame) => (
        <rect
          key={frame.yMm}
          x={round(frame.xMm)}
          y={round(frame.yMm)}
          width={round(frame.widthMm)}
          height={round(frame.heightMm)}
          fill="none"
          stroke="black"
          strokeWidth={0.25}
        />
      ))}
      {drawing.texts.map(({ xMm, baselineMm, sizePt, weight, runs }) => (
        <text
          key={baselineMm}
          x={round(xMm)}
          y={round(baselineMm)}
          fontSize={round(sizePt * MM_PER_POINT)}
          fontWeight={weight === 'bold' ? 700 : 400}
          // As wide as on paper, also where the screen has another font for a letter.
          textLength={round(runs.reduce((sum, run) => sum + run.widthMm, 0))}
          lengthAdjust="spacingAndGlyphs"
          fill="black"
        >
          {runs.map((run) => run.text).join('')}
        </text>
      ))}
    </>
  );
}

function codePath({ matrix, xMm, yMm, squareMm }: PlacedCode): string {
  return darkRuns(matrix)
    .map(({ x, y, squares }) => {
      const width = round(squares * squareMm);
      return `M${round(xMm + x * squareMm)} ${round(yMm + y * squareMm)}h${width}v${squareMm}h-${width}z`;
    })
    .join('');
}

const round = (mm: number) => Number(mm.toFixed(3));
