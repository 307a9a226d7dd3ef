import type { ReactNode } from 'react';
import type { PictureScale } from './picture-scale';

interface Props {
  scale: PictureScale;
  /** what the picture shows, in a sentence, for whoever does not see it */
  label: string;
  /** marked up the left side */
  figures: readonly number[];
  /** marked along the foot */
  times: readonly { at: number; words: ReactNode }[];
  /** under the grid */
  behind?: ReactNode;
  children: ReactNode;
}

export const FONT_SIZE = 13;

/** Axes and grid of a picture through time, drawn on the server. */
export function PictureFrame({ scale, label, figures, times, behind, children }: Props) {
  const { width, height, left, right, top, floor, x, y } = scale;
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${width} ${height}`}
      className="block h-auto w-full"
      fontSize={FONT_SIZE}
      fill="var(--ink-2)"
    >
      {behind}
      {figures.map((figure) => (
        <g key={figure}>
          <path d={`M${left} ${y(figure)}H${width - right}`} stroke="var(--grid)" />
          <text x={left - 6} y={y(figure) + FONT_SIZE / 3} textAnchor="end">
            {figure}
          </text>
        </g>
      ))}
      {times.map(({ at, words }) => (
        <g key={at}>
          <path d={`M${x(at)} ${floor}v5`} stroke="var(--edge)" />
          <text x={x(at)} y={floor + FONT_SIZE + 6} textAnchor="middle">
            {words}
          </text>
        </g>
      ))}
      <path d={`M${left} ${top}V${floor}H${width - right}`} fill="none" stroke="var(--edge)" />
      {children}
    </svg>
  );
}
