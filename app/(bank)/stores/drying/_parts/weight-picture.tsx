import { type DrawingSize, DrawnTwice } from '@/app/_components/time-picture/drawn-twice';
import { FONT_SIZE, PictureFrame } from '@/app/_components/time-picture/picture-frame';
import { pictureScale } from '@/app/_components/time-picture/picture-scale';
import { Dot, FittedCurve, Level } from '@/app/_components/time-picture/picture-strokes';
import { formatDayOfRun } from '@/app/_format/moisture';
import { roundTicks, tickValues } from '@/app/_format/ticks';
import type { DryingWeights } from '@/lib/domain/moisture/drying-weights';

interface Props {
  picture: DryingWeights;
  hourZero: string;
}

/** Weighings against the weight to stop at, as the balance shows them. */
export function WeightPicture({ picture, hourZero }: Props) {
  return (
    <DrawnTwice
      phone={{ width: 340, height: 270, ticks: 3 }}
      laptop={{ width: 760, height: 300, ticks: 8 }}
      caption={
        <>
          Dots: weighings with the tray, grams. Dashes: the weight to stop at.
          {picture.curve.length > 0 && ' Line: the fitted curve.'}
          {picture.reachedBetween && ' Shaded: when it is likely to be reached (9 times in 10).'}
        </>
      }
    >
      {(size) => <Drawing picture={picture} hourZero={hourZero} size={size} />}
    </DrawnTwice>
  );
}

const MARGINS = { left: 56, right: 14, top: 20, bottom: 30 };
const HOURS_A_DAY = 24;
/** shorter pictures are marked by the hour */
const BY_THE_HOUR = 30;

function Drawing({ picture, hourZero, size }: Props & { size: DrawingSize }) {
  const { weighed, curve, targetWeightG, reachedBetween, fromHours: from } = picture;
  const weights = [...weighed, ...curve].map(({ weightG }) => weightG);
  const vertical = tickValues(Math.min(targetWeightG, ...weights), Math.max(targetWeightG, ...weights), 5);
  const to = picture.toHours > from ? picture.toHours : from + HOURS_A_DAY;
  const byHour = to - from <= BY_THE_HOUR;
  const unit = byHour ? 1 : HOURS_A_DAY;
  const scale = pictureScale(
    { ...size, ...MARGINS },
    { times: [from, to], figures: [vertical[0] ?? 0, vertical.at(-1) ?? 1] },
  );
  const { x, y, top, floor } = scale;
  return (
    <PictureFrame
      scale={scale}
      label={`${weighed.length} ${weighed.length === 1 ? 'weighing' : 'weighings'}${curve.length > 0 ? ', the fitted curve' : ''} and the weight to stop at, ${targetWeightG.toFixed(1)} g with the tray. The table below has the same figures.`}
      figures={vertical}
      times={roundTicks(from / unit, to / unit, size.ticks, true).map((tick) => ({
        at: tick * unit,
        words: byHour ? hourWords(tick) : formatDayOfRun(hourZero, tick),
      }))}
      behind={
        reachedBetween && (
          <rect
            x={x(reachedBetween.fromHours)}
            y={top}
            width={Math.max(2, x(reachedBetween.toHours) - x(reachedBetween.fromHours))}
            height={floor - top}
            fill="var(--leaf-soft)"
          />
        )
      }
    >
      <text x={6} y={FONT_SIZE}>
        g
      </text>
      <Level scale={scale} figure={targetWeightG} />
      <text x={scale.width - scale.right} y={y(targetWeightG) - 5} textAnchor="end" fill="var(--madder)">
        stop at {targetWeightG.toFixed(1)} g
      </text>
      <FittedCurve scale={scale} points={curve.map(({ hours, weightG }) => [hours, weightG])} />
      {weighed.map(({ hours, weightG }) => (
        <Dot key={hours} x={x(hours)} y={y(weightG)} />
      ))}
    </PictureFrame>
  );
}

/** Hour 30 is 6:00 of the second day. */
const hourWords = (hour: number): string => `${hour % HOURS_A_DAY}:00`;
