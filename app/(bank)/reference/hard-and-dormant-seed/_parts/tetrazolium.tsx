import type { z } from 'zod';
import { Cautions } from '@/app/_components/cautions';
import { formatCount } from '@/app/_format/figures';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import { dormantShare } from '@/lib/domain/germination/dormancy/dormant-share';
import { tetrazoliumResult } from '@/lib/domain/germination/dormancy/viability-test';
import { cautionsFor } from '@/lib/domain/reference/cautions';
import { tetrazoliumSchema } from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { Dormancy } from './dormancy';
import { germinationOf } from './shares';
import { StripsAnswer } from './strips-answer';

const EXAMPLE = { stained: '46', partly: '2', unstained: '2', grew: '150', set: '200' };

/** Tetrazolium: how much is alive, and how much of that does not germinate. */
export function Tetrazolium({ action, address }: SectionProps) {
  const question = readQuestion(tetrazoliumSchema, address, EXAMPLE);
  return (
    <QuestionPart
      id="tetrazolium"
      title="Seed stained in tetrazolium"
      says="Living tissue stains red. With a germination test of other seed of the lot it shows how much is dormant."
    >
      <Cautions keys={cautionsFor('viability test').map(({ key }) => key)} />
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="stained" label="Stained as it should be" whole />
        <AskNumber question={question} name="partly" label="Stained in part, or wrongly" whole optional />
        <AskNumber question={question} name="unstained" label="Unstained" whole optional />
        <AskNumber question={question} name="grew" label="Germination test: seeds that grew" whole optional />
        <AskNumber question={question} name="set" label="Germination test: seeds set" whole optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: z.infer<typeof tetrazoliumSchema> }) {
  const { stained, partly, unstained, grew, set } = asked;
  const { seeds, estimate } = tetrazoliumResult({
    stainedNormally: stained,
    stainedAbnormally: partly,
    unstained,
  });
  const { lower, upper } = boundsOutwards(estimate);
  const other = grew === undefined || set === undefined ? null : { germinated: grew, seeds: set };
  const dormant = other && dormantShare({ viability: { alive: stained, seeds }, germination: other });
  return (
    <StripsAnswer
      label="Answer for tetrazolium"
      says={
        <>
          {formatCount(stained)} of {formatCount(seeds)} seeds stained as living seed does; the lot is likely between{' '}
          <b>
            {lower} and {upper} % alive
          </b>
          .
        </>
      }
      strips={[
        { name: 'alive', ...estimate },
        ...(other ? [{ name: 'germinated', ...germinationOf(other.germinated, other.seeds), quiet: true }] : []),
      ]}
    >
      {dormant && <Dormancy dormant={dormant} way="stained" />}
    </StripsAnswer>
  );
}
