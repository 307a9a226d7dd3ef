import { formatTemperature } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import type { LotCurve, SurvivalPanel } from '@/lib/domain/longevity/storage-experiment/experiment-pictures';
import { DASHES, MarkKey, MarkWithRange, type PlotBox, PlotFrame } from './plot-frame';

const BOX: PlotBox = { width: 340, height: 216, left: 34, right: 12, top: 30, bottom: 34 };

/** Germination against time, a small picture for each condition. */
export function SurvivalPlots({ panels }: { panels: readonly SurvivalPanel[] }) {
  const lots = [...new Set(panels.flatMap((panel) => panel.lots.map((one) => one.lot)))];
  return (
    <section className="grid gap-3" aria-labelledby="survival">
      <h2 id="survival">Germination over time</h2>
      <p className="max-w-prose">
        Points are counts with the range in which the lot lies nineteen times in twenty; lines are what the constants of
        all counts say. Where no constants were found, each condition keeps its own line.
      </p>
      {lots.length > 1 && (
        <ul className="flex flex-wrap gap-x-5 gap-y-1">
          {lots.map((lot, index) => (
            <li key={lot} className="flex items-center gap-2">
              <MarkKey series={index} /> {lot}
            </li>
          ))}
        </ul>
      )}
      <div className="grid gap-4 sm:grid-cols-2 xl:grid-cols-3">
        {panels.map((panel) => (
          <Panel key={`${panel.condition.temperatureC} ${panel.condition.moisturePercent}`} panel={panel} lots={lots} />
        ))}
      </div>
    </section>
  );
}

function Panel({ panel, lots }: { panel: SurvivalPanel; lots: readonly string[] }) {
  const { condition, longestDays } = panel;
  const title = `${condition.moisturePercent} % at ${formatTemperature(condition.temperatureC)}`;
  const x = (days: number) => BOX.left + (days / longestDays) * (BOX.width - BOX.left - BOX.right);
  const y = (proportion: number) => BOX.height - BOX.bottom - proportion * (BOX.height - BOX.top - BOX.bottom);
  return (
    <figure className="sheet grid gap-2 p-3!">
      <figcaption className="font-semibold">
        {title}
        {panel.curveOf === 'none' && <span className="label font-normal"> no line: see below</span>}
        {panel.curveOf === 'condition' && <span className="label font-normal"> its own line</span>}
      </figcaption>
      <PlotFrame
        box={BOX}
        label={panelInWords(title, panel)}
        xTitle="days"
        yTitle="% germinated"
        xTicks={roundTicks(0, longestDays).map((days) => ({ at: x(days), label: String(days) }))}
        yTicks={[0, 50, 100].map((percent) => ({ at: y(percent / 100), label: String(percent) }))}
      >
        {panel.lots.map((one) => {
          const series = lots.indexOf(one.lot);
          return (
            <g key={one.lot}>
              {one.curve.length > 0 && (
                <path
                  d={`M${one.curve.map((at) => `${x(at.days).toFixed(1)} ${y(at.proportion).toFixed(1)}`).join(' L')}`}
                  fill="none"
                  stroke="var(--indigo)"
                  strokeWidth={2}
                  strokeDasharray={DASHES[series % DASHES.length]}
                />
              )}
              {one.points.map((point) => (
                <MarkWithRange
                  key={point.days}
                  x={x(point.days)}
                  y={y(point.proportion)}
                  ends={[y(point.lower), y(point.upper)]}
                  series={series}
                />
              ))}
            </g>
          );
        })}
      </PlotFrame>
    </figure>
  );
}

function panelInWords(title: string, { lots }: SurvivalPanel): string {
  const ofLot = ({ lot, points }: LotCurve) => {
    const [first, last] = [points[0], points.at(-1)];
    if (!first || !last) return lot;
    return `${lot} from ${Math.round(first.proportion * 100)} % on day ${first.days} to ${Math.round(last.proportion * 100)} % on day ${last.days}`;
  };
  return `${title}: ${lots.map(ofLot).join('; ')}. The table of all counts has every figure.`;
}
