import { formatDate } from '@/app/_format/figures';
import { roundTicks, tickValues } from '@/app/_format/ticks';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { DryingWeights } from '@/lib/domain/moisture/drying-weights';

interface Props {
  picture: DryingWeights;
  hourZero: string;
}

/** Weighings against the weight to stop at, as the balance shows them. Drawn twice, so that words keep their size. */
export function WeightPicture({ picture, hourZero }: Props) {
  const { weighed, curve, reachedBetween } = picture;
  const label = `${weighed.length} ${weighed.length === 1 ? 'weighing' : 'weighings'}${curve.length > 0 ? ', the fitted curve' : ''} and the weight to stop at, ${picture.targetWeightG.toFixed(1)} g with the tray. The table below has the same figures.`;
  return (
    <figure className="grid gap-1">
      <div className="sm:hidden">
        <Drawing picture={picture} hourZero={hourZero} label={label} width={340} height={270} ticks={3} />
      </div>
      <div className="hidden sm:block">
        <Drawing picture={picture} hourZero={hourZero} label={label} width={760} height={300} ticks={8} />
      </div>
      <figcaption className="label">
        Dots: weighings with the tray, grams. Dashes: the weight to stop at.
        {curve.length > 0 && ' Line: the fitted curve.'}
        {reachedBetween && ' Shaded: when it is likely to be reached (9 times in 10).'}
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
const LEFT = 56;
const RIGHT = 14;
const TOP = 20;
const BOTTOM = 30;
const HOURS_A_DAY = 24;
/** shorter pictures are marked by the hour */
const BY_THE_HOUR = 30;

function Drawing({ picture, hourZero, label, width, height, ticks }: DrawingProps) {
  const { weighed, curve, targetWeightG, reachedBetween } = picture;
  const weights = [...weighed, ...curve].map(({ weightG }) => weightG);
  const vertical = tickValues(Math.min(targetWeightG, ...weights), Math.max(targetWeightG, ...weights), 5);
  const [lowest, highest] = [vertical[0] ?? 0, vertical.at(-1) ?? 1];
  const from = picture.fromHours;
  const to = picture.toHours > from ? picture.toHours : from + HOURS_A_DAY;
  const byHour = to - from <= BY_THE_HOUR;
  const unit = byHour ? 1 : HOURS_A_DAY;
  const across = roundTicks(from / unit, to / unit, ticks, true);
  const x = (hours: number) => LEFT + ((hours - from) / (to - from)) * (width - LEFT - RIGHT);
  const y = (grams: number) => height - BOTTOM - ((grams - lowest) / (highest - lowest)) * (height - TOP - BOTTOM);
  const floor = height - BOTTOM;
  const points = curve.map(({ hours, weightG }) => `${x(hours).toFixed(1)} ${y(weightG).toFixed(1)}`);
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${width} ${height}`}
      className="block h-auto w-full"
      fontSize={FONT_SIZE}
      fill="var(--ink-2)"
    >
      {reachedBetween && (
        <rect
          x={x(reachedBetween.fromHours)}
          y={TOP}
          width={Math.max(2, x(reachedBetween.toHours) - x(reachedBetween.fromHours))}
          height={floor - TOP}
          fill="var(--leaf-soft)"
        />
      )}
      {vertical.map((grams) => (
        <g key={grams}>
          <path d={`M${LEFT} ${y(grams)}H${width - RIGHT}`} stroke="var(--grid)" />
          <text x={LEFT - 6} y={y(grams) + FONT_SIZE / 3} textAnchor="end">
            {grams}
          </text>
        </g>
      ))}
      {across.map((tick) => (
        <g key={tick}>
          <path d={`M${x(tick * unit)} ${floor}v5`} stroke="var(--edge)" />
          <text x={x(tick * unit)} y={floor + FONT_SIZE + 6} textAnchor="middle">
            {byHour ? hourWords(tick) : dayWords(hourZero, tick)}
          </text>
        </g>
      ))}
      <path d={`M${LEFT} ${TOP}V${floor}H${width - RIGHT}`} fill="none" stroke="var(--edge)" />
      <text x={6} y={FONT_SIZE}>
        g
      </text>
      <path
        d={`M${LEFT} ${y(targetWeightG)}H${width - RIGHT}`}
        stroke="var(--madder)"
        strokeWidth={2}
        strokeDasharray="7 5"
      />
      <text x={width - RIGHT} y={y(targetWeightG) - 5} textAnchor="end" fill="var(--madder)">
        stop at {targetWeightG.toFixed(1)} g
      </text>
      {points.length > 0 && <path d={`M${points.join('L')}`} fill="none" stroke="var(--leaf)" strokeWidth={2} />}
      {weighed.map(({ hours, weightG }) => (
        <circle
          key={hours}
          cx={x(hours)}
          cy={y(weightG)}
          r={5}
          fill="var(--sheet)"
          stroke="var(--ink)"
          strokeWidth={2}
        />
      ))}
    </svg>
  );
}

/** '18 Nov': midnight of that day; the year stands in the table. */
const dayWords = (hourZero: string, day: number): string => formatDate(addDays(hourZero, day)).replace(/ \d{4}$/, '');

/** Hour 30 is 6:00 of the second day. */
const hourWords = (hour: number): string => `${hour % HOURS_A_DAY}:00`;
