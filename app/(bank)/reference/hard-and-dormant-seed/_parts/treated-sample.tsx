import type { z } from 'zod';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import { dormantShare } from '@/lib/domain/germination/dormancy/dormant-share';
import { treatedSampleSchema } from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { Dormancy } from './dormancy';
import { germinationOf, inPercent } from './shares';
import { StripsAnswer } from './strips-answer';

const EXAMPLE = { treatedGrew: '44', treatedSet: '50', plainGrew: '29', plainSet: '50' };

/** A side sample of the lot, its dormancy broken, beside one set as it was. */
export function TreatedSample({ action, address }: SectionProps) {
  const question = readQuestion(treatedSampleSchema, address, EXAMPLE);
  return (
    <QuestionPart
      id="treated"
      title="A side sample scarified or chilled before it is set"
      says="Set part of the lot as it is, and part after breaking its dormancy: what grows only after treatment was alive and held back."
    >
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="treatedGrew" label="Treated seeds that grew" whole />
        <AskNumber question={question} name="treatedSet" label="Treated seeds set" whole className="lg:col-span-2" />
        <AskNumber question={question} name="plainGrew" label="Untreated seeds that grew" whole />
        <AskNumber question={question} name="plainSet" label="Untreated seeds set" whole />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: z.infer<typeof treatedSampleSchema> }) {
  const { treatedGrew, treatedSet, plainGrew, plainSet } = asked;
  const treated = germinationOf(treatedGrew, treatedSet);
  const { lower, upper } = boundsOutwards(treated);
  const dormant = dormantShare({
    viability: { alive: treatedGrew, seeds: treatedSet },
    germination: { germinated: plainGrew, seeds: plainSet },
  });
  return (
    <StripsAnswer
      label="Answer for a treated sample"
      says={
        <>
          {inPercent(treated.proportion)} % grew after treatment: at least so much is alive, likely{' '}
          <b>
            between {lower} and {upper} %
          </b>
          .
        </>
      }
      strips={[
        { name: 'treated', ...treated },
        { name: 'as it was', ...germinationOf(plainGrew, plainSet), quiet: true },
      ]}
    >
      <Dormancy dormant={dormant} way="treated" />
    </StripsAnswer>
  );
}
