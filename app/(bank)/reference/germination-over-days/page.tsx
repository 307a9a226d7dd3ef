import type { Metadata } from 'next';
import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { CoursePicture } from '@/app/_components/time-course/course-picture';
import { CourseByDay, CourseFigures } from '@/app/_components/time-course/course-tables';
import { cautionsInWords, courseInWords } from '@/app/_components/time-course/course-words';
import type { DishCounts } from '@/lib/domain/germination/time-course/dish-counts';
import { germinationSpeed } from '@/lib/domain/germination/time-course/germination-speed';
import { summariseTimeCourse } from '@/lib/domain/germination/time-course/summarise-time-course';
import { dishesOf, germinationOverDaysSchema } from '@/lib/schemas/calculators/germination-over-days';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskChoice, AskLines, AskText } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { type Address, readQuestion } from '../_parts/read-question';

const SLUG = 'germination-over-days';
const EXAMPLE = {
  counts: '4 2 1 3 2\n5 11 9 12 10\n6 17 18 15 19\n7 9 11 8 7\n8 4 3 5 5\n10 2 3 3 2\n14 1 0 1 0',
  seeds: '50',
  countsAre: 'new',
};
const OTHER_EXAMPLES = [
  {
    name: 'a dish lost after day 5, another looked at on fewer days',
    ask: {
      counts: '3 4 6 5 -\n4 9 8 8 20\n5 11 10 12 -\n7 12 9 - 19\n10 6 5 - 6\n14 2 3 - 1',
      seeds: '50',
      countsAre: 'new',
    },
  },
  {
    name: 'running totals of one dish',
    ask: { counts: '3 0\n5 12\n7 31\n10 40\n14 42', seeds: '50', countsAre: 'total' },
  },
];

export const metadata: Metadata = { title: 'Germination over days' };

export default async function GerminationOverDaysPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const question = readQuestion(germinationOverDaysSchema, await searchParams, EXAMPLE);
  const { input } = question;
  const dishes = input && dishesOf(input.counts, input.seeds, input.countsAre ?? 'new');
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionForm action={`/reference/${SLUG}`} question={question}>
        <AskLines
          question={question}
          name="counts"
          label="Counts by day"
          hint="A line for each inspection: the day, then the seeds of each dish. A dash for a dish not looked at."
          rows={9}
        />
        <AskText
          question={question}
          name="seeds"
          label="Seeds set in a dish"
          hint="One number for all dishes, or one for each: 50 50 49 50."
        />
        <AskChoice
          question={question}
          name="countsAre"
          label="The counts are"
          options={[
            { value: 'new', label: 'newly germinated at each inspection' },
            { value: 'total', label: 'germinated so far (running totals)' },
          ]}
        />
      </QuestionForm>
      <p className="label no-print">
        Or see{' '}
        {OTHER_EXAMPLES.map(({ name, ask }, index) => (
          <span key={name}>
            {index > 0 && '; '}
            <Link
              href={`/reference/${SLUG}?${new URLSearchParams(ask)}`}
              className="inline-flex min-h-11 items-center underline underline-offset-3"
            >
              {name}
            </Link>
          </span>
        ))}
        .
      </p>
      {dishes?.ok && <Answer dishes={dishes.dishes} />}
      <Method />
    </CalculatorPage>
  );
}

function Answer({ dishes }: { dishes: DishCounts[] }) {
  const course = summariseTimeCourse(dishes);
  if (!course.ok) {
    return (
      <section className="sheet" aria-label="Answer">
        <p className="say">No curve could be worked out from these counts.</p>
      </section>
    );
  }
  const middle = germinationSpeed(dishes, { countedAt: 'middle' });
  return (
    <section className="sheet grid gap-5" aria-label="Answer">
      <Caption text={courseInWords(course)} />
      <CoursePicture course={course} />
      {cautionsInWords(course).map((words) => (
        <p key={words} className="max-w-prose border-l-4 border-ochre pl-3">
          {words}
        </p>
      ))}
      <CourseFigures course={course} middle={middle.ok ? middle : null} />
      <CourseByDay course={course} />
    </section>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="germination-over-days.md"
      equation={
        <>
          <p>
            Counted: the likeliest shares over the stretches between inspections. With all dishes looked at on the same
            days, 1 − Π(1 − found/watched); otherwise found step by step. A dish lost, and seed left at the end, count
            as not germinated until then. Band: Wilson’s interval with the number of seeds that carries the same
            information.
          </p>
          <p>
            T50 = <i>t</i>
            <sub>i</sub> + (<i>G</i>/2 − <i>n</i>
            <sub>i</sub>)(<i>t</i>
            <sub>j</sub> − <i>t</i>
            <sub>i</sub>)/(<i>n</i>
            <sub>j</sub> − <i>n</i>
            <sub>i</sub>): a straight line between the running totals around half of <i>G</i>, the seeds that
            germinated. Mean time Σ<i>nt</i>/<i>G</i>; speed Σ<i>n</i>/<i>t</i>.
          </p>
          <p>
            Fitted: <i>F</i>(<i>t</i>) = <i>d</i>/(1 + (<i>e</i>/<i>t</i>)<sup>b</sup>), or <i>d</i> Φ(<i>b</i> log(
            <i>t</i>/<i>e</i>)), whichever is likelier; <i>d</i> the share able to germinate, <i>e</i> the middle day,{' '}
            <i>b</i> the steepness.
          </p>
        </>
      }
      limits={
        <p>
          Seeds are taken as independent and alike: dishes that differ by more than chance make every interval too
          narrow. When within a stretch a seed germinated is not known; the T50 takes it as even. A test ended while
          seed was still germinating says little about the share able to. Mean time and speed leave out what a lost dish
          might still have done.
        </p>
      }
      source={
        <p>
          Turnbull 1976 (curve); Coolbear et al. 1984 and Farooq et al. 2005 (T50); Maguire 1962 (speed); Ranal &
          Santana 2006 (mean time); Ritz, Pipper & Streibig 2013, Eur. J. Agron. 45:1–6 (fitted curve): cited from
          memory. The band on effective seeds is our own choice.
        </p>
      }
      checked={
        <p>
          R, on 14 published sets of counts and 15 made ones: counted and fitted curves and their standard errors agree
          within 10⁻¹³; profile intervals within 10⁻¹⁰.
        </p>
      }
    />
  );
}
