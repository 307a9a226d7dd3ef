import { CurvePicture } from '@/app/_components/curve-picture';
import { formatPercent } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import { fittedPoints, stairPoints } from '@/lib/domain/germination/time-course/picture-points';
import type { TimeCourse } from '@/lib/domain/germination/time-course/summarise-time-course';
import { formatDays } from './course-words';

/** Counted stairs with their band, and the fitted curve through them. */
export function CoursePicture({ course }: { course: TimeCourse }) {
  const { curve, fit, halfOfGerminated: half } = course;
  const lastDay = curve.final.day;
  const stairs = stairPoints(curve);
  const found = half.ok ? `; half of those had germinated by day ${formatDays(half.day)}` : '';
  return (
    <CurvePicture
      label={`Share of the seeds germinated by day: none on day 0, ${formatPercent(curve.final.germinated)} on day ${formatDays(lastDay)}${found}. The figures are in the table below.`}
      xTitle="days from sowing"
      yTitle="germinated, % of the seeds set"
      xRange={[0, lastDay]}
      xTicks={roundTicks(0, lastDay, 6)}
      writeX={formatDays}
      band={{
        name: 'likely for the lot (95 %, day by day)',
        points: stairs.map(({ day, lower, upper }) => [day, lower, upper] as const),
      }}
      curves={[
        { name: 'counted', tone: 'indigo', points: stairs.map(({ day, germinated }) => [day, germinated] as const) },
        ...(fit.ok
          ? [
              {
                name: `fitted (${fit.shape})`,
                tone: 'leaf' as const,
                dashed: true,
                points: fittedPoints(fit, { lastDay }).map(({ day, germinated }) => [day, germinated] as const),
              },
            ]
          : []),
      ]}
      marks={half.ok ? [{ at: half.day, name: 'half of the germinated, day' }] : []}
    />
  );
}
