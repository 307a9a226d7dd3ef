import type { ReactNode } from 'react';

/** Room inside a drawing, in its own units. */
export interface PlotBox {
  width: number;
  height: number;
  left: number;
  right: number;
  top: number;
  bottom: number;
}

export interface Tick {
  /** place along the axis in drawing units */
  at: number;
  label: string;
}

interface Props {
  box: PlotBox;
  label: string;
  xTicks: readonly Tick[];
  yTicks: readonly Tick[];
  xTitle: string;
  yTitle: string;
  children: ReactNode;
}

/** Axes and grid of a picture drawn on the server. */
export function PlotFrame({ box, label, xTicks, yTicks, xTitle, yTitle, children }: Props) {
  const { width, height, left, right, top, bottom } = box;
  const foot = height - bottom;
  return (
    <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label} className="figures w-full text-ink-2">
      {yTicks.map((tick) => (
        <g key={tick.label}>
          <line x1={left} x2={width - right} y1={tick.at} y2={tick.at} stroke="var(--grid)" />
          <text x={left - 6} y={tick.at + 4} textAnchor="end" fontSize={12} fill="currentColor">
            {tick.label}
          </text>
        </g>
      ))}
      {xTicks.map((tick) => (
        <g key={tick.label}>
          <line x1={tick.at} x2={tick.at} y1={foot} y2={foot + 4} stroke="var(--rule)" />
          <text x={tick.at} y={foot + 17} textAnchor="middle" fontSize={12} fill="currentColor">
            {tick.label}
          </text>
        </g>
      ))}
      <path d={`M${left} ${top} V${foot} H${width - right}`} fill="none" stroke="var(--rule)" />
      <text x={width - right} y={height - 4} textAnchor="end" fontSize={12} fill="currentColor">
        {xTitle}
      </text>
      <text x={2} y={12} fontSize={12} fill="currentColor">
        {yTitle}
      </text>
      {children}
    </svg>
  );
}

const SHAPES = ['circle', 'square', 'triangle', 'diamond'] as const;

/** A point: series differ by shape. */
function Mark({ x, y, series }: { x: number; y: number; series: number }) {
  const shape = SHAPES[series % SHAPES.length];
  const look = { fill: 'var(--sheet)', stroke: 'var(--ink)', strokeWidth: 1.75 };
  if (shape === 'circle') return <circle cx={x} cy={y} r={4} {...look} />;
  if (shape === 'square') return <rect x={x - 3.6} y={y - 3.6} width={7.2} height={7.2} {...look} />;
  if (shape === 'triangle') return <path d={`M${x} ${y - 4.8} l4.6 8 h-9.2 Z`} {...look} />;
  return <path d={`M${x} ${y - 5} l5 5 l-5 5 l-5 -5 Z`} {...look} />;
}

interface MarkWithRangeProps {
  x: number;
  y: number;
  /** ends of the range in which the figure lies */
  ends: readonly [number, number];
  series: number;
}

/** A point of one series on the range in which its figure lies. */
export function MarkWithRange({ x, y, ends: [lower, upper], series }: MarkWithRangeProps) {
  return (
    <g>
      <line x1={x} x2={x} y1={lower} y2={upper} stroke="var(--ink)" strokeWidth={1.25} />
      <Mark x={x} y={y} series={series} />
    </g>
  );
}

/** The shape of a series, for the words that name it. */
export function MarkKey({ series }: { series: number }) {
  return (
    <svg viewBox="0 0 14 14" aria-hidden className="inline-block size-3.5 align-[-2px]">
      <Mark x={7} y={7} series={series} />
    </svg>
  );
}

/** Strokes by series, so that curves can be told apart without colour. */
export const DASHES = [undefined, '6 3', '2 3', '9 3 2 3'] as const;
