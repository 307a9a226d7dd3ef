import { type DrawingSize, DrawnTwice } from '@/app/_components/time-picture/drawn-twice';
import { FONT_SIZE, PictureFrame } from '@/app/_components/time-picture/picture-frame';
import { pictureScale } from '@/app/_components/time-picture/picture-scale';
import { Dot, Level } from '@/app/_components/time-picture/picture-strokes';
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

/** Sealed stays, tests and limits through time. */
export function MoisturePicture({ history, limits }: Props) {
  return (
    <DrawnTwice
      phone={{ width: 340, height: 270, ticks: 2 }}
      laptop={{ width: 760, height: 300, ticks: 5 }}
      caption="Dots: tests, with the give or take of their method. Thick lines: sealed stays, at the moisture they are reckoned at (dotted where it comes from tests). Moisture in percent of fresh weight."
      captionClass="max-w-prose"
    >
      {(size) => <Drawing history={history} limits={limits} size={size} />}
    </DrawnTwice>
  );
}

const MARGINS = { left: 34, right: 12, top: 12, bottom: 30 };
/** days either side, so that a test of today does not stand on the edge */
const LEAST_DAYS = 60;

const LIMIT_COLOURS: Record<MoistureLimit['kind'], string> = {
  most: 'var(--madder)',
  target: 'var(--leaf)',
  least: 'var(--ink-2)',
};

function Drawing({ history, limits, size }: Props & { size: DrawingSize }) {
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
  const scale = pictureScale({ ...size, ...MARGINS }, { times: [from, to], figures: [0, vertical.at(-1) ?? 1] });
  const { x, y } = scale;
  const days = Array.from({ length: size.ticks + 1 }, (_, index) =>
    Math.round(from + ((to - from) * (index + 0.5)) / (size.ticks + 1)),
  );
  const dated = span > 400 ? formatMonth : formatDate;
  return (
    <PictureFrame
      scale={scale}
      label={`Moisture through time: ${dots.length} ${dots.length === 1 ? 'test' : 'tests'} and ${stretches.length} sealed ${stretches.length === 1 ? 'stay' : 'stays'}. The tables below have the same figures.`}
      figures={vertical}
      times={days.map((day) => ({ at: day, words: dated(fromEpochDay(day)) }))}
    >
      {limits.map(({ percent, label: said, kind }) => (
        <g key={kind}>
          <Level
            scale={scale}
            figure={percent}
            colour={LIMIT_COLOURS[kind]}
            strokeWidth={1.5}
            dashes={kind === 'least' ? '2 4' : '7 5'}
          />
          <text
            x={scale.left + 6}
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
          <Dot x={x(day)} y={y(moisturePercent)} />
        </g>
      ))}
    </PictureFrame>
  );
}
