import { formatCount } from '@/app/_format/figures';

export interface Curve {
  name: string;
  tone: 'leaf' | 'indigo' | 'ochre' | 'ink-2';
  dashed?: boolean;
  points: readonly (readonly [x: number, y: number])[];
}

/** Where a curve may lie: drawn soft, under the curves. */
export interface Band {
  name: string;
  points: readonly (readonly [x: number, lower: number, upper: number])[];
}

interface Props {
  /** what the picture shows, in a sentence, for whoever does not see it */
  label: string;
  xTitle: string;
  yTitle: string;
  xRange: readonly [number, number];
  xTicks: readonly number[];
  curves: readonly Curve[];
  band?: Band;
  /** how figures on the x axis are written; whole unless told otherwise */
  writeX?: (x: number) => string;
  /** a level to be reached, 0-1 */
  level?: { at: number; name: string };
  /** places on the x axis that the words speak of */
  marks?: readonly { at: number; name: string }[];
}

const HEIGHTS = [0, 0.25, 0.5, 0.75, 1];
const TONES = { leaf: 'var(--leaf)', indigo: 'var(--indigo)', ochre: 'var(--ochre)', 'ink-2': 'var(--ink-2)' } as const;

/**
 * Curves of a share (0-1) against a count, drawn on the server. The drawing stretches with the page while its words, set beside
 * it, keep their size.
 */
export function CurvePicture(props: Props) {
  const { label, xTitle, yTitle, xRange, xTicks, curves, band, level, marks = [], writeX = formatCount } = props;
  const across = (x: number) => (100 * (x - xRange[0])) / (xRange[1] - xRange[0]);
  return (
    <figure className="grid gap-2">
      <p className="label">{yTitle}</p>
      <div className="grid grid-cols-[2.5rem_1fr] gap-x-2" role="img" aria-label={label}>
        <div className="figures relative h-56 text-sm text-ink-2">
          {HEIGHTS.map((height) => (
            <span key={height} className="absolute right-0 translate-y-1/2" style={{ bottom: `${height * 100}%` }}>
              {height * 100}
            </span>
          ))}
        </div>
        <div className="relative h-56 border-b border-l border-rule">
          <svg
            viewBox="0 0 100 100"
            preserveAspectRatio="none"
            className="absolute inset-0 size-full"
            aria-hidden="true"
          >
            {band && (
              <path
                d={`M${outline(band)
                  .map(([x, y]) => `${across(x).toFixed(2)} ${(100 - y * 100).toFixed(2)}`)
                  .join(' L')}Z`}
                fill="var(--indigo-soft)"
              />
            )}
            {HEIGHTS.slice(1).map((height) => (
              <path
                key={height}
                d={`M0 ${100 - height * 100} H100`}
                stroke="var(--grid)"
                vectorEffect="non-scaling-stroke"
              />
            ))}
            {marks.map(({ at, name }) => (
              <path
                key={name}
                d={`M${across(at)} 0 V100`}
                stroke="var(--ink)"
                strokeDasharray="2 3"
                vectorEffect="non-scaling-stroke"
              />
            ))}
            {level && (
              <path
                d={`M0 ${100 - level.at * 100} H100`}
                stroke="var(--madder)"
                strokeWidth="1.5"
                strokeDasharray="6 4"
                vectorEffect="non-scaling-stroke"
              />
            )}
            {curves.map(({ name, tone, dashed, points }) => (
              <path
                key={name}
                d={`M${points.map(([x, y]) => `${across(x).toFixed(2)} ${(100 - y * 100).toFixed(2)}`).join(' L')}`}
                fill="none"
                stroke={TONES[tone]}
                strokeWidth="2.5"
                strokeDasharray={dashed ? '3 4' : undefined}
                vectorEffect="non-scaling-stroke"
              />
            ))}
          </svg>
        </div>
        <span />
        <div className="figures relative h-6 text-sm text-ink-2">
          {xTicks.map((tick) => (
            <span key={tick} className="absolute -translate-x-1/2 pt-1" style={{ left: `${across(tick)}%` }}>
              {writeX(tick)}
            </span>
          ))}
        </div>
      </div>
      <p className="label text-right">{xTitle}</p>
      <ul className="flex flex-wrap gap-x-5 gap-y-1 text-sm">
        {curves.map(({ name, tone, dashed }) => (
          <li key={name} className="flex items-center gap-2">
            <svg viewBox="0 0 28 4" className="h-1 w-7" aria-hidden="true">
              <path d="M0 2 H28" stroke={TONES[tone]} strokeWidth="3" strokeDasharray={dashed ? '3 4' : undefined} />
            </svg>
            {name}
          </li>
        ))}
        {band && (
          <li className="flex items-center gap-2">
            <span aria-hidden className="h-3.5 w-7 border border-edge bg-indigo-soft" />
            {band.name}
          </li>
        )}
        {level && (
          <li className="flex items-center gap-2 text-madder">
            <svg viewBox="0 0 28 4" className="h-1 w-7" aria-hidden="true">
              <path d="M0 2 H28" stroke="var(--madder)" strokeWidth="2" strokeDasharray="6 4" />
            </svg>
            {level.name}
          </li>
        )}
        {marks.map(({ at, name }) => (
          <li key={name} className="flex items-center gap-2">
            <svg viewBox="0 0 4 14" className="h-3.5 w-1" aria-hidden="true">
              <path d="M2 0 V14" stroke="var(--ink)" strokeDasharray="2 3" />
            </svg>
            {name}: <span className="figures">{writeX(at)}</span>
          </li>
        ))}
      </ul>
    </figure>
  );
}

/** Along the upper edge and back along the lower. */
const outline = ({ points }: Band) => [
  ...points.map(([x, , upper]) => [x, upper] as const),
  ...points.toReversed().map(([x, lower]) => [x, lower] as const),
];
