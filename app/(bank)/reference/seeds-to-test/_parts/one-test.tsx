import type { z } from 'zod';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { seedsToTell } from '@/lib/domain/germination/sample-size/seeds-to-tell';
import type { oneTestQuestion } from '@/lib/schemas/calculators/seeds-to-test';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';
import { inHundred } from './in-hundred';

const USUAL_DISH = 50;

type Asked = z.infer<typeof oneTestQuestion>;

/** One test of a fixed size against a line. */
export function OneTest({ question }: { question: Question<Asked> }) {
  return (
    <QuestionPart id="one-test" title="In one test, above a line">
      <QuestionForm action="/reference/seeds-to-test#one-test" question={question}>
        <AskNumber question={question} name="threshold" label="The line" unit="%" />
        <AskNumber question={question} name="truly" label="The lot truly has" hint="What you believe." unit="%" />
        <AskNumber
          question={question}
          name="wrongAbove"
          label="Wrongly called above"
          hint="At most, of lots at the line."
          unit="in 100"
        />
        <AskNumber
          question={question}
          name="missed"
          label="Missed"
          hint="At most, of lots as good as believed."
          unit="in 100"
        />
        <AskNumber
          question={question}
          name="unevenness"
          label="Unevenness of dishes"
          hint="How much seeds of a dish resemble each other; even dishes are 0, 2 is common."
          unit="in 100"
          optional
        />
        <AskNumber
          question={question}
          name="dish"
          label="Seeds in a dish"
          hint={`Matters for uneven dishes only; empty is ${USUAL_DISH}.`}
          whole
          optional
        />
        <AskNumber question={question} name="spare" label="Seeds to spare" whole optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: Asked }) {
  const correlation = (asked.unevenness ?? 0) / 100;
  const found = seedsToTell({
    poor: asked.threshold / 100,
    good: asked.truly / 100,
    falseKeep: asked.wrongAbove,
    falseRegrow: asked.missed,
    dishes: { dishSize: asked.dish ?? USUAL_DISH, correlation },
    seedsAvailable: asked.spare,
  });
  if (!found.ok) {
    const { best, seedsAvailable } = found;
    return (
      <Notice kind="caution">
        Not reachable with {formatCount(seedsAvailable)} seeds: a lot of {asked.truly} % would be missed{' '}
        {inHundred(best.falseRegrow)} times in 100
        {best.keepAtLeast > best.seeds ? ', because no count is enough' : ''}.
      </Notice>
    );
  }
  const { steady, smallest } = found;
  return (
    <div className="sheet grid gap-3">
      <p className="say">
        Test <b>{formatCount(steady.seeds)} seeds</b>. If {formatCount(steady.keepAtLeast)} or more germinate, the lot
        is above {asked.threshold} %.
      </p>
      <p className="max-w-prose">
        A lot exactly at {asked.threshold} % comes out above {inHundred(steady.falseKeep)} times in 100; one of{' '}
        {asked.truly} % is missed {inHundred(steady.falseRegrow)} times. A larger test does so too
        {Number.isFinite(found.steadyUpTo) ? ` (up to ${formatCount(found.steadyUpTo)} seeds, whole dishes)` : ''}.
        {smallest.seeds < steady.seeds &&
          ` ${formatCount(smallest.seeds)} seeds and ${formatCount(smallest.keepAtLeast)} germinated would just do, but some larger tests would not: counts are whole.`}
      </p>
    </div>
  );
}
