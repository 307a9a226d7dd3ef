import { Caption } from '@/app/_components/caption';
import { CoursePicture } from '@/app/_components/time-course/course-picture';
import { CourseByDay, CourseFigures } from '@/app/_components/time-course/course-tables';
import { cautionsInWords, courseInWords } from '@/app/_components/time-course/course-words';
import { germinationSpeed } from '@/lib/domain/germination/time-course/germination-speed';
import type { TimeCourseOfTray } from '@/lib/server/queries/tray-page';
import { noCurveInWords, unseenInWords } from './tray-words';

interface Props {
  course: TimeCourseOfTray;
  /** positions of dishes that nobody has looked at */
  unseen?: number[];
  /** of the days of the test, so many were cold */
  prechillDays: number;
  /** the tray is still being counted */
  soFar: boolean;
}

/** Germination over the days of a tray: how much, how fast, how evenly. */
export function TimeCoursePart({ course: found, unseen = [], prechillDays, soFar }: Props) {
  const title = soFar ? 'Germination over days, so far' : 'Germination over days';
  if (!found.ok) {
    return (
      <section className="sheet grid gap-3" aria-labelledby="course-title">
        <h2 id="course-title">{title}</h2>
        <p className="quiet">{noCurveInWords(found.reason)}</p>
      </section>
    );
  }
  const { course, dishes } = found;
  const middle = germinationSpeed(dishes, { countedAt: 'middle' });
  // Under way the last count is no end: that seed is still coming up is no caution then.
  const cautions = cautionsInWords(
    soFar ? { ...course, cautions: { ...course.cautions, isStillRising: false } } : course,
  );
  return (
    <section className="sheet grid gap-5" aria-labelledby="course-title">
      <h2 id="course-title">{title}</h2>
      <Caption text={courseInWords(course)} />
      <p className="quiet -mt-3 max-w-prose text-sm">
        Only normal seedlings count as germinated. Seed taken out as abnormal, hard, fresh or dead counts as set and not
        germinated.
        {unseen.length > 0 && ` ${unseenInWords(unseen)}`}
        {prechillDays > 0 && ` Days are counted from setting; the first ${prechillDays} of them were cold.`}
      </p>
      <CoursePicture course={course} />
      {cautions.map((words) => (
        <p key={words} className="max-w-prose border-l-4 border-ochre pl-3">
          {words}
        </p>
      ))}
      <details>
        <summary className="min-h-11 cursor-pointer py-2 font-semibold">
          Speed, evenness and fitted curve in figures
        </summary>
        <CourseFigures course={course} middle={middle.ok ? middle : null} />
      </details>
      <CourseByDay course={course} />
    </section>
  );
}
