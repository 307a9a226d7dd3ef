import type { z } from 'zod';
import { formatCount } from '@/app/_format/figures';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import { cutResult } from '@/lib/domain/germination/dormancy/viability-test';
import { cutSchema } from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { inPercent } from './shares';
import { StripsAnswer } from './strips-answer';

const EXAMPLE = { firm: '38', empty: '6', insect: '2', rotten: '4' };

/** A cut test: the most that can be alive, and what cleaning could take out. */
export function Cut({ action, address }: SectionProps) {
  const question = readQuestion(cutSchema, address, EXAMPLE);
  return (
    <QuestionPart
      id="cut"
      title="Seed cut open"
      says="A cut shows at once what is empty, eaten or rotten; not what is alive."
    >
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="firm" label="Full and firm" whole />
        <AskNumber question={question} name="empty" label="Empty" whole optional />
        <AskNumber question={question} name="insect" label="Eaten by insects" whole optional />
        <AskNumber question={question} name="rotten" label="Soft, discoloured or rotten" whole optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: z.infer<typeof cutSchema> }) {
  const result = cutResult({
    firm: asked.firm,
    empty: asked.empty,
    insectDamaged: asked.insect,
    dead: asked.rotten,
  });
  const { lower, upper } = boundsOutwards(result.estimate);
  const worthless = boundsOutwards(result.worthless);
  return (
    <StripsAnswer
      label="Answer for cutting"
      says={
        <>
          {formatCount(asked.firm)} of {formatCount(result.seeds)} seeds were full and firm: likely{' '}
          <b>
            between {lower} and {upper} % of the lot, and no more than that is alive
          </b>
          .
        </>
      }
      strips={[
        { name: 'firm', ...result.estimate },
        { name: 'empty or eaten', ...result.worthless, quiet: true },
      ]}
    >
      <p className="max-w-prose">
        {inPercent(result.worthless.proportion)} % (likely {worthless.lower} to {worthless.upper}) were empty or eaten
        by insects: winnowing or floating may take them out.
        {result.firmOfFull && ` Of the full seeds ${inPercent(result.firmOfFull.proportion)} % were firm.`} A firm seed
        may still be dead: cutting does not show that it is alive.
      </p>
    </StripsAnswer>
  );
}
