import { darkRuns } from '@/lib/domain/labels/dark-runs';
import { encodeCode } from '@/lib/server/labels/encode-code';

/** Light squares round the code, as ISO/IEC 18004 wants them: without them a camera may not find it. */
const QUIET = 4;

/** A QR code to be read from the screen: black on white, whatever the screen's colours. */
export function CodePicture({ text, called }: { text: string; called: string }) {
  const matrix = encodeCode('qr', text);
  const side = matrix.rows.length + 2 * QUIET;
  const path = darkRuns(matrix)
    .map(({ x, y, squares }) => `M${x + QUIET} ${y + QUIET}h${squares}v1h-${squares}z`)
    .join('');
  return (
    <svg
      role="img"
      aria-label={called}
      viewBox={`0 0 ${side} ${side}`}
      shapeRendering="crispEdges"
      className="size-56 shrink-0 border border-rule"
    >
      <rect width={side} height={side} fill="white" />
      <path d={path} fill="black" />
    </svg>
  );
}
