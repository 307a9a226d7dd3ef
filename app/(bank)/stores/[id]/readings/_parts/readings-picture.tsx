import { formatMonth } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import type { ThinStretch } from '@/lib/domain/logger/thin-readings';
import { instantInWords } from './instants';

interface Props {
  title: string;
  points: readonly ThinStretch[];
  write: (value: number) => string;
  tone: 'leaf' | 'indigo';
  /** the least height of the picture, in the unit of the values: so that noise does not look like weather */
  leastSpan: number;
}

const TONES = { leaf: 'var(--leaf)', indigo: 'var(--indigo)' } as const;
const TIMES_NAMED = 4;
const SECONDS_OF_MONTHS = 120 * 86_400;

/** What was logged, drawn on the server: in each short stretch of time a line from the lowest reading to the highest. */
export function ReadingsPicture({ title, points, write, tone, leastSpan }: Props) {
  const first = points[0];
  const last = points.at(-1);
  if (!first || !last) return null;
  const lowest = points.reduce((least, point) => Math.min(least, point.lowest), first.lowest);
  const highest = points.reduce((most, point) => Math.max(most, point.highest), first.highest);
  const room = Math.max((leastSpan - (highest - lowest)) / 2, (highest - lowest) * 0.08);
  const [bottom, top] = [lowest - room, highest + room];
  const across = (at: number) => (100 * (at - first.at)) / (last.at - first.at || 1);
  const down = (value: number) => (100 * (top - value)) / (top - bottom);
  const heights = roundTicks(bottom, top, 4);
  const times = Array.from(
    { length: TIMES_NAMED },
    (_, index) => first.at + ((last.at - first.at) * index) / (TIMES_NAMED - 1),
  );
  const label = `${title} from ${instantInWords(first.at)} to ${instantInWords(last.at)}: lowest ${write(lowest)}, highest ${write(highest)}`;
  return (
    <figure className="grid gap-2">
      <figcaption className="label">{title}</figcaption>
      <div className="grid grid-cols-[4rem_1fr] gap-x-2" role="img" aria-label={label}>
        <div className="figures relative h-44 text-sm text-ink-2">
          {heights.map((height) => (
            <span key={height} className="absolute right-0 -translate-y-1/2" style={{ top: `${down(height)}%` }}>
              {write(height)}
            </span>
          ))}
        </div>
        <div className="relative h-44 border-b border-l border-rule">
          <svg
            viewBox="0 0 100 100"
            preserveAspectRatio="none"
            className="absolute inset-0 size-full"
            aria-hidden="true"
          >
            {heights.map((height) => (
              <path key={height} d={`M0 ${down(height)} H100`} stroke="var(--grid)" vectorEffect="non-scaling-stroke" />
            ))}
            <path
              d={lineThrough(points, across, down)}
              fill="none"
              stroke={TONES[tone]}
              strokeWidth="1.75"
              strokeLinecap="round"
              vectorEffect="non-scaling-stroke"
            />
          </svg>
        </div>
        <span />
        <div className="relative h-6 text-sm text-ink-2">
          {times.map((at, index) => (
            <span
              key={at}
              className={`absolute pt-1 whitespace-nowrap ${index === 0 ? '' : index === TIMES_NAMED - 1 ? '-translate-x-full' : 'hidden -translate-x-1/2 sm:inline'}`}
              style={{ left: `${across(at)}%` }}
            >
              {timeInWords(at, last.at - first.at)}
            </span>
          ))}
        </div>
      </div>
    </figure>
  );
}

/** From the lowest to the highest of each stretch and on to the next; broken where stretches are missing. */
function lineThrough(
  points: readonly ThinStretch[],
  across: (at: number) => number,
  down: (value: number) => number,
): string {
  const steps = points.slice(1).map(({ at }, index) => at - (points[index] as ThinStretch).at);
  const usual = Math.min(...steps);
  return points
    .map(({ at, lowest, highest }, index) => {
      const goesOn = index > 0 && (steps[index - 1] as number) < 1.5 * usual;
      const x = across(at).toFixed(2);
      return `${goesOn ? 'L' : 'M'}${x} ${down(lowest).toFixed(2)} L${x} ${down(highest).toFixed(2)}`;
    })
    .join(' ');
}

/** '2 Mar 2026' over months, '2 Mar 2026, 14:00' over days. */
function timeInWords(at: number, span: number): string {
  if (span > SECONDS_OF_MONTHS) return formatMonth(new Date(at * 1000).toISOString().slice(0, 10));
  return instantInWords(at).replace(' UTC', '');
}
