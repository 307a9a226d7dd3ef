import { formatCount, formatTemperature } from '@/app/_format/figures';
import type { MoisturePicture } from '@/lib/domain/longevity/storage-experiment/experiment-pictures';
import { logTicks } from './log-ticks';
import { MarkKey, MarkWithRange, type PlotBox, PlotFrame, type Tick } from './plot-frame';

const BOX: PlotBox = { width: 400, height: 300, left: 56, right: 52, top: 30, bottom: 38 };
/** Room beyond the outermost figures, as a factor. */
const ROOM = 1.15;
/** How far beyond the outermost figure a range is drawn, as a factor. */
const MOST_BEYOND = 4;

/** Days to lose one probit against moisture, both logarithmic: the equation is right where points lie along the lines. */
export function MoisturePlot({ picture: { points, lines } }: { picture: MoisturePicture }) {
  if (points.length === 0) return null;
  const temperatures = [...new Set([...points, ...lines].map((one) => one.temperatureC))].sort((a, b) => a - b);
  const moistures = [...points, ...lines.flatMap((line) => line.ends)].map((one) => one.moisturePercent);
  const middles = [...points, ...lines.flatMap((line) => line.ends)].map((one) => one.sigmaDays);
  const [lowest, highest] = [Math.min(...middles) / MOST_BEYOND, Math.max(...middles) * MOST_BEYOND];
  // A condition that hardly declined may reach over many powers of ten: its bar ends at the frame.
  const bars = points.map((one) => ({
    ...one,
    lower: Math.max(one.lower, lowest),
    upper: Math.min(one.upper, highest),
  }));
  const days = [...middles, ...bars.flatMap((one) => [one.lower, one.upper])];
  const [mFrom, mTo] = [Math.min(...moistures) / ROOM, Math.max(...moistures) * ROOM];
  const [dFrom, dTo] = [Math.min(...days) / ROOM, Math.max(...days) * ROOM];
  const along = (value: number, from: number, to: number) => Math.log(value / from) / Math.log(to / from);
  const x = (moisture: number) => BOX.left + along(moisture, mFrom, mTo) * (BOX.width - BOX.left - BOX.right);
  const y = (sigma: number) => BOX.height - BOX.bottom - along(sigma, dFrom, dTo) * (BOX.height - BOX.top - BOX.bottom);
  return (
    <section className="grid gap-3" aria-labelledby="moisture">
      <h2 id="moisture">Days to lose one probit, by moisture</h2>
      <p className="max-w-prose">
        Both axes are logarithmic. Points are the conditions, each by itself, with the range in which its figure lies
        nineteen times in twenty{lines.length > 0 && '; lines are the constants of all counts'}. Where the equation
        holds, points lie along straight lines side by side.
      </p>
      <ul className="flex flex-wrap gap-x-5 gap-y-1">
        {temperatures.map((temperature, series) => (
          <li key={temperature} className="flex items-center gap-2">
            <MarkKey series={series} /> {formatTemperature(temperature)}
          </li>
        ))}
      </ul>
      <div className="sheet max-w-xl p-3!">
        <PlotFrame
          box={BOX}
          label="Days to lose one probit against moisture for each temperature. The table of conditions has the same figures."
          xTitle="% moisture"
          yTitle="days to lose one probit"
          xTicks={moistureTicks(mFrom, mTo, x)}
          yTicks={logTicks(dFrom, dTo).map((value) => ({ at: y(value), label: formatCount(value) }))}
        >
          {lines.map(({ temperatureC, ends: [dry, moist] }) =>
            dry && moist ? (
              <g key={temperatureC}>
                <line
                  x1={x(dry.moisturePercent)}
                  y1={y(dry.sigmaDays)}
                  x2={x(moist.moisturePercent)}
                  y2={y(moist.sigmaDays)}
                  stroke="var(--indigo)"
                  strokeWidth={2}
                />
                <text x={x(moist.moisturePercent) + 10} y={y(moist.sigmaDays) + 4} fontSize={12} fill="var(--indigo)">
                  {formatTemperature(temperatureC)}
                </text>
              </g>
            ) : null,
          )}
          {bars.map((point) => (
            <MarkWithRange
              key={`${point.temperatureC} ${point.moisturePercent}`}
              x={x(point.moisturePercent)}
              y={y(point.sigmaDays)}
              ends={[y(point.lower), y(point.upper)]}
              series={temperatures.indexOf(point.temperatureC)}
            />
          ))}
        </PlotFrame>
      </div>
    </section>
  );
}

/** Whole percents, leaving out those that would crowd: on a logarithmic axis the high ones lie close. */
function moistureTicks(from: number, to: number, x: (moisture: number) => number): Tick[] {
  const ticks: Tick[] = [];
  for (let whole = Math.ceil(from); whole <= to; whole++) {
    const before = ticks.at(-1);
    if (!before || x(whole) - before.at >= LEAST_TICK_GAP) ticks.push({ at: x(whole), label: String(whole) });
  }
  return ticks;
}

/** Drawing units between two figures of an axis. */
const LEAST_TICK_GAP = 26;
