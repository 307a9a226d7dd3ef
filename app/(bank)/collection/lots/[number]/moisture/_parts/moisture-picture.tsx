import { formatDate, formatMonth } from '@/app/_format/figures';
import { tickValues } from '@/app/_format/ticks';
import { fromEpochDay } from '@/lib/domain/calendar/calendar-date';
import type { MoistureHistory } from '@/lib/domain/moisture/moisture-history';

/** A moisture that is not to be passed, or to be aimed at. */
export interface MoistureLimit {
  percent: number;
  label: string;
  kind: 'most' | 'target' | 'least';
}

interface Props {
  history: MoistureHistory;
  limits: readonly MoistureLimit[];
}

/** Sealed stays, tests and limits through time. Drawn twice, so that the words keep their size on a phone. */
export function MoisturePicture({ history, limits }: Props) {
  const { dots, stretches } = history;
  const label = `Moisture through time: ${dots.length} ${dots.length === 1 ? 'test' : 'tests'} and ${stretches.length} sealed ${stretches.length === 1 ? 'stay' : 'stays'}. The tables below have the same figures.`;
  return (
    <figure className="grid gap-1">
      <div className="sm:hidden">
        <Drawing history={history} limits={limits} label={label} width={340} height={270} ticks={2} />
      </div>
      <div className="hidden sm:block">
        <Drawing history={history} limits={limits} label={label} width={760} height={300} ticks={5} />
      </div>
      <figcaption className="label max-w-prose">
        Dots: tests, with the give or take of their method. Thick lines: sealed stays, at the moisture they are reckoned
        at (dotted where it comes from tests). Moisture in percent of fresh weight.
      </figcaption>
    </figure>
  );
}

interface DrawingProps extends Props {
  label: string;
  width: number;
  height: number;
  ticks: number;
}

const FONT_SIZE = 13;
const LEFT = 34;
const RIGHT = 12;
const TOP = 12;
const BOTTOM = 30;
/** days either side, so that a test of today does not stand on the edge */
const LEAST_DAYS = 60;

const LIMIT_COLOURS: Record<MoistureLimit['kind'], string> = {
  most: 'var(--madder)',
  target: 'var(--leaf)',
  least: 'var(--ink-2)',
};

function Drawing({ history, limits, label, width, height, ticks }: DrawingProps) {
  const { dots, stretches } = history;
  const span = Math.max(LEAST_DAYS, history.toDay - history.fromDay);
  const [from, to] = [history.toDay - span * 1.04, history.toDay + span * 0.04];
  const vertical = tickValues(
    0,
    Math.max(
      ...limits.map(({ percent }) => percent + 1),
      ...dots.map(({ upperPercent }) => upperPercent),
      ...stretches.map(({ moisturePercent }) => moisturePercent),
    ),
    6,
  );
  const highest = vertical.at(-1) ?? 1;
  const x = (day: number) => LEFT + ((day - from) / (to - from)) * (width - LEFT - RIGHT);
  const y = (percent: number) => height - BOTTOM - (percent / highest) * (height - TOP - BOTTOM);
  const days = Array.from({ length: ticks + 1 }, (_, index) =>
    Math.round(from + ((to - from) * (index + 0.5)) / (ticks + 1)),
  );
  const dated = span > 400 ? formatMonth : formatDate;
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${width} ${height}`}
      className="block h-auto w-full"
      fontSize={FONT_SIZE}
      fill="var(--ink-2)"
    >
      {vertical.map((percent) => (
        <g key={percent}>
          <path d={`M${LEFT} ${y(percent)}H${width - RIGHT}`} stroke="var(--grid)" />
          <text x={LEFT - 6} y={y(percent) + FONT_SIZE / 3} textAnchor="end">
            {percent}
          </text>
        </g>
      ))}
      {days.map((day) => (
        <g key={day}>
          <path d={`M${x(day)} ${height - BOTTOM}v5`} stroke="var(--edge)" />
          <text x={x(day)} y={height - BOTTOM + FONT_SIZE + 6} textAnchor="middle">
            {dated(fromEpochDay(day))}
          </text>
        </g>
      ))}
      <path d={`M${LEFT} ${TOP}V${height - BOTTOM}H${width - RIGHT}`} fill="none" stroke="var(--edge)" />
      {limits.map(({ percent, label: said, kind }) => (
        <g key={kind}>
          <path
            d={`M${LEFT} ${y(percent)}H${width - RIGHT}`}
            stroke={LIMIT_COLOURS[kind]}
            strokeWidth={1.5}
            strokeDasharray={kind === 'least' ? '2 4' : '7 5'}
          />
          <text
            x={LEFT + 6}
            y={kind === 'least' ? y(percent) + FONT_SIZE + 2 : y(percent) - 5}
            fill={LIMIT_COLOURS[kind]}
          >
            {said}
          </text>
        </g>
      ))}
      {stretches.map(({ packet, fromDay, toDay, moisturePercent, source }) => (
        <path
          key={`${packet}-${fromDay}-${toDay}`}
          d={`M${x(fromDay)} ${y(moisturePercent)}H${Math.max(x(toDay), x(fromDay) + 2)}`}
          stroke="var(--indigo)"
          strokeWidth={4}
          strokeDasharray={source === 'measured' ? '2 3' : undefined}
        />
      ))}
      {dots.map(({ number, day, moisturePercent, lowerPercent, upperPercent }) => (
        <g key={number}>
          <path d={`M${x(day)} ${y(lowerPercent)}V${y(upperPercent)}`} stroke="var(--ink)" strokeWidth={1.5} />
          <circle cx={x(day)} cy={y(moisturePercent)} r={5} fill="var(--sheet)" stroke="var(--ink)" strokeWidth={2} />
        </g>
      ))}
    </svg>
  );
}
