import { dryBasisFromFresh, freshBasisFromDry } from '@/lib/domain/moisture/basis';
import { basisSchema } from '@/lib/schemas/calculators/moisture-and-drying';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';

const EXAMPLE = { basisMoisture: '8', basis: 'fresh' };
const WORDS = { fresh: 'of fresh weight', dry: 'of dry weight' } as const;

/** The same water, said the other way. */
export function BasisSection({ action, address }: SectionProps) {
  const question = readQuestion(basisSchema, address, EXAMPLE);
  return (
    <>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="basisMoisture" label="Moisture" unit="%" />
        <AskChoice
          question={question}
          name="basis"
          label="Percent of"
          options={[
            { value: 'fresh', label: 'fresh weight (as everywhere here)' },
            { value: 'dry', label: 'dry weight' },
          ]}
        />
      </QuestionForm>
      {question.input && <Answer {...question.input} />}
    </>
  );
}

function Answer({ basisMoisture, basis }: { basisMoisture: number; basis: 'fresh' | 'dry' }) {
  const other = basis === 'fresh' ? dryBasisFromFresh(basisMoisture) : freshBasisFromDry(basisMoisture);
  return (
    <section className="sheet grid gap-3" aria-label="The other way round">
      <p className="say">
        {basisMoisture} % {WORDS[basis]} is <b>{other.toFixed(2)} %</b> {WORDS[basis === 'fresh' ? 'dry' : 'fresh']}.
      </p>
      <p className="label">
        Of dry weight = 100 m / (100 − m); of fresh weight = 100 d / (100 + d). The water is the same, what it is
        divided by is not.
      </p>
    </section>
  );
}
