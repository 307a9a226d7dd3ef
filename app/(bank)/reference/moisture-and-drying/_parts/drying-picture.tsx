import { formatDate } from '@/app/_format/figures';
import { roundTicks, tickValues } from '@/app/_format/ticks';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import type { DryingPicture as Picture } from '@/lib/domain/moisture/drying-curve';

/** Weighings, the fitted curve and the target. Drawn twice, so that the words keep their size on a phone. */
export function DryingPicture({ picture, hourZero }: { picture: Picture; hourZero: string | null }) {
  const label = `Moisture at ${picture.weighed.length} weighings${picture.curve.length > 0 ? ', the fitted curve' : ''} and the target of ${picture.targetMoisturePercent} %. The table below has the same figures.`;
  return (
    <figure className="grid gap-1">
      <div className="sm:hidden">
        <Drawing picture={picture} hourZero={hourZero} label={label} width={340} height={260} ticks={4} />
      </div>
      <div className="hidden sm:block">
        <Drawing picture={picture} hourZero={hourZero} label={label} width={720} height={300} ticks={8} />
      </div>
      <figcaption className="label">
        Dots: weighings, as moisture.{picture.curve.length > 0 && ' Line: the fitted curve.'} Dashes: the target.
      </figcaption>
    </figure>
  );
}

interface DrawingProps {
  picture: Picture;
  hourZero: string | null;
  label: string;
  width: number;
  height: number;
  ticks: number;
}

const FONT_SIZE = 13;
const LEFT = 44;
const RIGHT = 14;
const TOP = 12;
const BOTTOM = 46;

function Drawing({ picture, hourZero, label, width, height, ticks }: DrawingProps) {
  const moistures = [...picture.weighed, ...picture.curve].map(({ moisturePercent }) => moisturePercent);
  const vertical = tickValues(
    Math.min(picture.targetMoisturePercent, ...moistures),
    Math.max(picture.targetMoisturePercent, ...moistures),
    5,
  );
  const [lowest, highest] = [vertical[0] ?? 0, vertical.at(-1) ?? 1];
  const inDays = picture.toHours - picture.fromHours > 72 || hourZero !== null;
  const unit = inDays ? 24 : 1;
  const [from, to] = [picture.fromHours, picture.toHours];
  const across = roundTicks(from / unit, to / unit, ticks, hourZero !== null);
  const x = (hours: number) => LEFT + ((hours - from) / (to - from || 1)) * (width - LEFT - RIGHT);
  const y = (percent: number) => height - BOTTOM - ((percent - lowest) / (highest - lowest)) * (height - TOP - BOTTOM);
  const curve = picture.curve.map((point) => `${x(point.hours).toFixed(1)} ${y(point.moisturePercent).toFixed(1)}`);
  const floor = height - BOTTOM;
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
      {across.map((tick) => (
        <g key={tick}>
          <path d={`M${x(tick * unit)} ${floor}v5`} stroke="var(--edge)" />
          <text x={x(tick * unit)} y={floor + FONT_SIZE + 6} textAnchor="middle">
            {hourZero === null ? tick : dayWords(hourZero, tick)}
          </text>
        </g>
      ))}
      <path d={`M${LEFT} ${TOP}V${floor}H${width - RIGHT}`} fill="none" stroke="var(--edge)" />
      <text x={(LEFT + width - RIGHT) / 2} y={height - 6} textAnchor="middle">
        moisture, % of fresh weight, by {hourZero === null ? (inDays ? 'days' : 'hours') : 'date (midnight)'}
      </text>
      <path
        d={`M${LEFT} ${y(picture.targetMoisturePercent)}H${width - RIGHT}`}
        stroke="var(--madder)"
        strokeWidth={2}
        strokeDasharray="7 5"
      />
      {curve.length > 0 && <path d={`M${curve.join('L')}`} fill="none" stroke="var(--leaf)" strokeWidth={2} />}
      {picture.weighed.map(({ hours, moisturePercent }) => (
        <circle
          key={hours}
          cx={x(hours)}
          cy={y(moisturePercent)}
          r={5}
          fill="var(--sheet)"
          stroke="var(--ink)"
          strokeWidth={2}
        />
      ))}
    </svg>
  );
}

/** '18 Nov': the year stands in the table. */
function dayWords(hourZero: string, day: number): string {
  return formatDate(addDays(hourZero, day)).replace(/ \d{4}$/, '');
}
