import type { z } from 'zod';
import { formatCount } from '@/app/_format/figures';
import { effectiveParents, parentsBySeed } from '@/lib/domain/regrow/diversity/effective-size';
import type { parentsQuestion } from '@/lib/schemas/calculators/keeping-variety';
import { AskChoice, AskNumber, AskText } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';
import { BREEDING_OPTIONS } from './rare-form';

type Asked = z.infer<typeof parentsQuestion>;

/** How many parents a seed lot really has, when some gave more seed than others. */
export function Parents({ question }: { question: Question<Asked> }) {
  return (
    <QuestionPart id="parents" title="How many parents a lot really has">
      <QuestionForm action="/reference/keeping-variety#parents" question={question}>
        <AskText
          question={question}
          name="seedByPlant"
          label="Seed from each plant"
          hint="In grams or seeds, a blank between them: 60 20 10 5 5"
          className="sm:col-span-2"
        />
        <AskChoice question={question} name="parentBreeding" label="Plants" options={BREEDING_OPTIONS} />
        <AskNumber
          question={question}
          name="pollenPlants"
          label="More plants that flowered"
          hint="Gave pollen but no seed."
          whole
          optional
        />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: Asked }) {
  const { seedByPlant, parentBreeding, pollenPlants = 0 } = asked;
  const bearing = seedByPlant.filter((seed) => seed > 0).length;
  if (bearing === 0) return <p className="sheet say">None of these plants gave seed.</p>;
  const plants = parentBreeding === 'selfing' ? bearing : seedByPlant.length + pollenPlants;
  const size = effectiveParents(parentsBySeed({ seedByPlant, pollination: parentBreeding, pollenPlants }));
  const alike = effectiveParents(
    parentsBySeed({
      seedByPlant: seedByPlant.map((seed) => (seed > 0 ? 1 : 0)),
      pollination: parentBreeding,
      pollenPlants,
    }),
  );
  return (
    <div className="sheet grid gap-2">
      <p className="say">
        These {formatCount(plants)} plants pass on as much variety as <b>{size.toFixed(1)} plants</b> that share alike.
        Sown, the lot keeps {(100 * (1 - 1 / (2 * size))).toFixed(1)} % of the variety its parents had.
      </p>
      <p className="max-w-prose">
        {alike > size * 1.02
          ? `Taking the same amount of seed from each plant that bears would make it ${alike.toFixed(1)}, at no cost but some seed.`
          : 'The plants share about alike: mixing equal amounts would change little.'}
      </p>
    </div>
  );
}
