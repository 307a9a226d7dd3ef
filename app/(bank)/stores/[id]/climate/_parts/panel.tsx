import { STANDARD_GAP_HOURS } from '@/lib/domain/longevity/store-day';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';
import type { Band, Quantity } from './quantities';

interface Props {
  quantity: Quantity;
  range: [number, number];
  ticks: number[];
  /** share of the width at a time */
  across: (epochSeconds: number) => number;
  page: StoreClimatePage;
  label: string;
}

const SECONDS_PER_DAY = 86_400;
const WIDTH = 1000;
const HEIGHT = 100;

/** One quantity over time: hatches where nothing was logged, the band, the mean, and the target as a stepped line. */
export function Panel({ quantity, range: [low, high], ticks, across, page, label }: Props) {
  const x = (epochSeconds: number) => (across(epochSeconds) * WIDTH).toFixed(1);
  const y = (value: number) => (HEIGHT - ((value - low) / (high - low)) * HEIGHT).toFixed(1);
  const steps = (shift: (tolerance: number) => number) =>
    quantity.targets
      .map(
        ({ fromDay, toDay, value, tolerance }) =>
          `M${x(fromDay * SECONDS_PER_DAY)} ${y(value + shift(tolerance))}H${x(toDay * SECONDS_PER_DAY)}`,
      )
      .join('');
  return (
    <div className="grid gap-1">
      <p className="label">
        {quantity.name}, {quantity.unit}
      </p>
      <div className="grid grid-cols-[2.5rem_1fr] gap-x-2" role="img" aria-label={label}>
        <div className={`figures relative text-sm text-ink-2 ${quantity.key === 'temperature' ? 'h-56' : 'h-36'}`}>
          {ticks.map((tick) => (
            <span
              key={tick}
              className="absolute right-0 translate-y-1/2"
              style={{ bottom: `${((tick - low) / (high - low)) * 100}%` }}
            >
              {String(tick).replace('-', '−')}
            </span>
          ))}
        </div>
        <div data-plot className="relative border-b border-l border-rule">
          {page.unlogged.map((gap) => (
            <div
              key={gap.fromEpochSeconds}
              className="not-logged absolute inset-y-0"
              style={{
                left: `${across(gap.fromEpochSeconds) * 100}%`,
                width: `${(across(gap.toEpochSeconds) - across(gap.fromEpochSeconds)) * 100}%`,
              }}
            />
          ))}
          <svg
            viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
            preserveAspectRatio="none"
            className="absolute inset-0 size-full"
            aria-hidden="true"
          >
            {ticks.map((tick) => (
              <path key={tick} d={`M0 ${y(tick)}H${WIDTH}`} stroke="var(--grid)" vectorEffect="non-scaling-stroke" />
            ))}
            <path
              d={bandPath(quantity.bands, x, y)}
              fill="var(--indigo-soft)"
              stroke="var(--indigo)"
              strokeOpacity="0.55"
              strokeWidth="1"
              vectorEffect="non-scaling-stroke"
            />
            <path
              d={meanPath(quantity.bands, x, y)}
              fill="none"
              stroke="var(--indigo)"
              strokeWidth="1.75"
              vectorEffect="non-scaling-stroke"
            />
            <path
              d={steps((tolerance) => tolerance) + steps((tolerance) => -tolerance)}
              stroke="var(--leaf)"
              strokeWidth="1"
              strokeDasharray="1 3"
              vectorEffect="non-scaling-stroke"
            />
            <path
              d={steps(() => 0)}
              stroke="var(--leaf)"
              strokeWidth="2"
              strokeDasharray="6 4"
              vectorEffect="non-scaling-stroke"
            />
          </svg>
        </div>
      </div>
    </div>
  );
}

type Scale = (value: number) => string;

/** In steps, one a span, so that a single hour of failure is as wide as its span. Spans that touch are one outline. */
function bandPath(bands: readonly Band[], x: Scale, y: Scale): string {
  const runs: Band[][] = [];
  for (const band of bands) {
    const run = runs.at(-1);
    if (run && run.at(-1)?.toEpochSeconds === band.fromEpochSeconds) run.push(band);
    else runs.push([band]);
  }
  return runs
    .map((run) => {
      const upper = run.map((band) => `${y(band.highest)}H${x(band.toEpochSeconds)}`).join('V');
      const lower = run.toReversed().map((band) => `${y(band.lowest)}H${x(band.fromEpochSeconds)}`);
      return `M${x((run[0] as Band).fromEpochSeconds)} ${upper}V${lower.join('V')}Z`;
    })
    .join('');
}

/** From the middle of one span to that of the next; broken where nothing was logged for longer than is bridged. */
function meanPath(bands: readonly Band[], x: Scale, y: Scale): string {
  const middle = ({ fromEpochSeconds, toEpochSeconds }: Band) => (fromEpochSeconds + toEpochSeconds) / 2;
  return bands
    .map((band, index) => {
      const before = bands[index - 1];
      const isBroken = !before || band.fromEpochSeconds - before.toEpochSeconds > STANDARD_GAP_HOURS * 3600;
      return `${isBroken ? 'M' : 'L'}${x(middle(band))} ${y(band.mean)}`;
    })
    .join('');
}
