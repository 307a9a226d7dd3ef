import type { PictureScale } from './picture-scale';

interface LevelProps {
  scale: PictureScale;
  figure: number;
  colour?: string;
  strokeWidth?: number;
  dashes?: string;
}

/** A dashed line across the picture: what is aimed at, or not to be passed. */
export function Level({
  scale: { left, right, width, y },
  figure,
  colour = 'var(--madder)',
  strokeWidth = 2,
  dashes = '7 5',
}: LevelProps) {
  return (
    <path
      d={`M${left} ${y(figure)}H${width - right}`}
      stroke={colour}
      strokeWidth={strokeWidth}
      strokeDasharray={dashes}
    />
  );
}

interface FittedProps {
  scale: PictureScale;
  points: readonly (readonly [time: number, figure: number])[];
}

/** A fitted curve; nothing where nothing could be fitted. */
export function FittedCurve({ scale: { x, y }, points }: FittedProps) {
  if (points.length === 0) return null;
  const line = points.map(([time, figure]) => `${x(time).toFixed(1)} ${y(figure).toFixed(1)}`);
  return <path d={`M${line.join('L')}`} fill="none" stroke="var(--leaf)" strokeWidth={2} />;
}

/** Something that was measured. */
export function Dot({ x, y }: { x: number; y: number }) {
  return <circle cx={x} cy={y} r={5} fill="var(--sheet)" stroke="var(--ink)" strokeWidth={2} />;
}
