import type { ClimateAddress } from '@/app/_format/climate-path';
import { formatDateRange } from '@/app/_format/date-range';
import { roundTicks, tickValues } from '@/app/_format/ticks';
import { timeTicks } from '@/app/_format/time-ticks';
import type { StoreClimatePage } from '@/lib/server/queries/store-climate';
import { DragToZoom } from './drag-to-zoom';
import { Panel } from './panel';
import { type Quantity, quantities } from './quantities';

interface Props {
  storeId: string;
  page: StoreClimatePage;
  address: ClimateAddress;
}

const SECONDS_PER_DAY = 86_400;

/** Temperature and humidity over the stretch, drawn on the server: the mean, and from lowest to highest around it. */
export function ClimatePlot({ storeId, page, address }: Props) {
  const [from, to] = [page.fromDay * SECONDS_PER_DAY, page.toDay * SECONDS_PER_DAY];
  const across = (epochSeconds: number) => (epochSeconds - from) / (to - from);
  const ticks = timeTicks(page.fromDay, page.toDay);
  return (
    <figure className="grid gap-3">
      <DragToZoom storeId={storeId} fromEpochSeconds={from} toEpochSeconds={to} address={address}>
        {quantities(page).map((quantity) => (
          <Panel
            key={quantity.key}
            quantity={quantity}
            range={rangeOf(quantity)}
            ticks={roundTicks(...rangeOf(quantity), 5)}
            across={across}
            page={page}
            label={labelOf(quantity, page)}
          />
        ))}
      </DragToZoom>
      <div className="grid grid-cols-[2.5rem_1fr] gap-x-2">
        <span />
        <div aria-hidden className="figures relative -mt-3 h-6 text-sm text-ink-2">
          {ticks.map(({ epochSeconds, label }) => (
            <span
              key={epochSeconds}
              className="absolute -translate-x-1/2 pt-1 whitespace-nowrap"
              style={{ left: `${across(epochSeconds) * 100}%` }}
            >
              {label}
            </span>
          ))}
        </div>
      </div>
      <Legend page={page} />
    </figure>
  );
}

/** Everything that is drawn, with a little room, from one round figure to another. */
function rangeOf({ bands, targets }: Quantity): [number, number] {
  const values = [
    ...bands.flatMap(({ lowest, highest }) => [lowest, highest]),
    ...targets.flatMap(({ value, tolerance }) => [value - tolerance, value + tolerance]),
  ];
  const [low, high] = values.reduce(([least, most], value) => [Math.min(least, value), Math.max(most, value)], [
    Infinity,
    -Infinity,
  ] as [number, number]);
  const round = tickValues(low, high, 5);
  return [round[0] as number, round.at(-1) as number];
}

function labelOf({ name, unit, bands, targets }: Quantity, page: StoreClimatePage): string {
  const days = formatDateRange(page.from, page.to);
  const meant = [...new Set(targets.map(({ value }) => `${value} ${unit}`))].join(', then ');
  if (bands.length === 0) return `${name}, ${days}: nothing logged; meant to be ${meant}.`;
  const lowest = bands.reduce((least, band) => Math.min(least, band.lowest), Infinity);
  const highest = bands.reduce((most, band) => Math.max(most, band.highest), -Infinity);
  const target = meant === '' ? '' : `, meant to be ${meant}`;
  return `${name}, ${days}: from ${round(lowest)} to ${round(highest)} ${unit}${target}. The same figures can be shown in a table below.`;
}

const round = (value: number) => Math.round(value * 10) / 10;

function Legend({ page }: { page: StoreClimatePage }) {
  return (
    <ul className="flex flex-wrap gap-x-5 gap-y-1 text-sm">
      {page.spans.length > 0 && (
        <>
          <li className="flex items-center gap-2">
            <Line stroke="var(--indigo)" width={2.5} />
            mean of {spanWords(page.spanSeconds)}
          </li>
          <li className="flex items-center gap-2">
            <span aria-hidden className="h-3.5 w-7 border border-indigo bg-indigo-soft" />
            lowest to highest in them
          </li>
        </>
      )}
      <li className="flex items-center gap-2">
        <Line stroke="var(--leaf)" width={2} dashes="6 4" />
        target
      </li>
      <li className="flex items-center gap-2">
        <Line stroke="var(--leaf)" width={1} dashes="1 3" />
        edge of what counts as outside
      </li>
      {page.unlogged.length > 0 && (
        <li className="flex items-center gap-2">
          <span aria-hidden className="not-logged h-3.5 w-7 border border-edge" />
          not logged: the target stands in
        </li>
      )}
    </ul>
  );
}

function Line({ stroke, width, dashes }: { stroke: string; width: number; dashes?: string }) {
  return (
    <svg viewBox="0 0 28 4" className="h-1 w-7 shrink-0" aria-hidden="true">
      <path d="M0 2 H28" stroke={stroke} strokeWidth={width} strokeDasharray={dashes} />
    </svg>
  );
}

function spanWords(seconds: number): string {
  const [count, name] =
    seconds < 3600
      ? [seconds / 60, 'minute']
      : seconds < SECONDS_PER_DAY
        ? [seconds / 3600, 'hour']
        : [seconds / SECONDS_PER_DAY, 'day'];
  return count === 1 ? `each ${name}` : `every ${count} ${name}s`;
}
