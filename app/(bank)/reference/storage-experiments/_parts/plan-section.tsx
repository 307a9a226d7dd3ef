import { Notice } from '@/app/_components/notice';
import { TableHead } from '@/app/_components/table-head';
import { formatCount, formatPercent } from '@/app/_format/figures';
import { daysInWords } from '@/lib/domain/longevity/storage-experiment/describe-fit';
import { planCounts } from '@/lib/domain/longevity/storage-experiment/plan-counts';
import type { planQuestionSchema } from '@/lib/schemas/storage-experiment/plan-question';
import { getConstants } from '@/lib/server/queries/reference';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';

/** A fair count, as the guide has it. */
const SEEDS_A_COUNT = 50;

type Plan = (typeof planQuestionSchema)['_output'];

interface Props {
  question: Question<Plan>;
  choices: readonly { id: string; name: string }[];
}

/** For an experiment to come: on which days to count, by constants that are thought to be near. */
export async function PlanSection({ question, choices }: Props) {
  const constants = question.input && (await getConstants(question.input.constants));
  return (
    <QuestionPart id="plan" title="Plan one: when to count">
      <QuestionForm action="/reference/storage-experiments#plan" question={question}>
        <AskChoice
          question={question}
          name="constants"
          label="Constants thought to be near"
          options={choices.map(({ id, name }) => ({ value: id, label: name }))}
        />
        <AskNumber question={question} name="moisture" label="Moisture" unit="%" />
        <AskNumber question={question} name="temperature" label="Temperature" unit="°C" />
        <AskNumber question={question} name="germination" label="Germination before storage" unit="%" />
        <AskNumber question={question} name="counts" label="Counts after that" whole />
        <AskNumber question={question} name="longest" label="Longest wait" unit="days" whole />
      </QuestionForm>
      {question.input && !constants && (
        <Notice kind="note">These constants are no longer there: choose others above.</Notice>
      )}
      {question.input && constants && <Answer asked={question.input} constants={constants} />}
    </QuestionPart>
  );
}

type Constants = NonNullable<Awaited<ReturnType<typeof getConstants>>>;

function Answer({ asked, constants }: { asked: Plan; constants: Constants }) {
  const plan = planCounts({
    constants,
    condition: { moisturePercent: asked.moisture, temperatureC: asked.temperature },
    initialGermination: asked.germination,
    counts: asked.counts,
    longestDays: asked.longest,
  });
  const later = plan.counts.slice(1).map((count) => formatCount(count.days));
  const seeds = SEEDS_A_COUNT * plan.counts.length;
  return (
    <section className="sheet grid gap-3" aria-label="Days to count">
      <p className="say">
        Count before storage and on day <b>{listed(later)}</b>: {formatCount(seeds)} seeds at {SEEDS_A_COUNT} a count.
      </p>
      <p className="max-w-prose">
        By the constants of {constants.name} one probit is lost in {daysInWords(plan.sigmaDays)} here. Yours may be off
        by a factor of two: put a jar aside for one count more.
      </p>
      {plan.losesTooLittle ? (
        <Notice kind="caution">
          So little will have died by then that the rate stays unknown. Choose a warmer or moister condition, or wait
          longer.
        </Notice>
      ) : (
        plan.isCutShort && <p className="max-w-prose">The longest wait ends it before most of the seed has died.</p>
      )}
      <table className="ledger max-w-md">
        <TableHead columns={['day', 'germination to expect']} />
        <tbody>
          {plan.counts.map(({ days, expectedGermination }) => (
            <tr key={days}>
              <td className="number">{formatCount(days)}</td>
              <td className="number">{formatPercent(expectedGermination)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

const listed = (items: readonly string[]) =>
  items.length < 2 ? items.join('') : `${items.slice(0, -1).join(', ')} and ${items.at(-1)}`;
