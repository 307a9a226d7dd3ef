import { type DrawingSize, DrawnTwice } from '@/app/_components/time-picture/drawn-twice';
import { PictureFrame } from '@/app/_components/time-picture/picture-frame';
import { pictureScale } from '@/app/_components/time-picture/picture-scale';
import { Dot, FittedCurve, Level } from '@/app/_components/time-picture/picture-strokes';
import { formatDayOfRun } from '@/app/_format/moisture';
import { roundTicks, tickValues } from '@/app/_format/ticks';
import type { DryingPicture as Picture } from '@/lib/domain/moisture/drying-curve';

interface Props {
  picture: Picture;
  hourZero: string | null;
}

/** Weighings, the fitted curve and the target. */
export function DryingPicture({ picture, hourZero }: Props) {
  return (
    <DrawnTwice
      phone={{ width: 340, height: 260, ticks: 4 }}
      laptop={{ width: 720, height: 300, ticks: 8 }}
      caption={
        <>Dots: weighings, as moisture.{picture.curve.length > 0 && ' Line: the fitted curve.'} Dashes: the target.</>
      }
    >
      {(size) => <Drawing picture={picture} hourZero={hourZero} size={size} />}
    </DrawnTwice>
  );
}

const MARGINS = { left: 44, right: 14, top: 12, bottom: 46 };

function Drawing({ picture, hourZero, size }: Props & { size: DrawingSize }) {
  const { weighed, curve, targetMoisturePercent: target, fromHours: from, toHours: to } = picture;
  const moistures = [...weighed, ...curve].map(({ moisturePercent }) => moisturePercent);
  const vertical = tickValues(Math.min(target, ...moistures), Math.max(target, ...moistures), 5);
  const inDays = to - from > 72 || hourZero !== null;
  const unit = inDays ? 24 : 1;
  const scale = pictureScale(
    { ...size, ...MARGINS },
    { times: [from, to], figures: [vertical[0] ?? 0, vertical.at(-1) ?? 1] },
  );
  const { x, y } = scale;
  return (
    <PictureFrame
      scale={scale}
      label={`Moisture at ${weighed.length} weighings${curve.length > 0 ? ', the fitted curve' : ''} and the target of ${target} %. The table below has the same figures.`}
      figures={vertical}
      times={roundTicks(from / unit, to / unit, size.ticks, hourZero !== null).map((tick) => ({
        at: tick * unit,
        words: hourZero === null ? tick : formatDayOfRun(hourZero, tick),
      }))}
    >
      <text x={(scale.left + scale.width - scale.right) / 2} y={scale.height - 6} textAnchor="middle">
        moisture, % of fresh weight, by {hourZero === null ? (inDays ? 'days' : 'hours') : 'date (midnight)'}
      </text>
      <Level scale={scale} figure={target} />
      <FittedCurve scale={scale} points={curve.map(({ hours, moisturePercent }) => [hours, moisturePercent])} />
      {weighed.map(({ hours, moisturePercent }) => (
        <Dot key={hours} x={x(hours)} y={y(moisturePercent)} />
      ))}
    </PictureFrame>
  );
}
