import type { z } from 'zod';
import { formatChance, formatCount, formatPercentFigure } from '@/app/_format/figures';
import { chanceOfKeepingAllele, plantsToKeepAllele } from '@/lib/domain/regrow/diversity/keeping-alleles';
import type { rareFormQuestion } from '@/lib/schemas/calculators/keeping-variety';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';

export const BREEDING_OPTIONS = [
  { value: 'crossing', label: 'cross freely' },
  { value: 'selfing', label: 'pollinate themselves' },
];
const PLANTS_SHOWN = [10, 20, 40, 80, 160];
const FREQUENCIES_SHOWN = [10, 5, 3, 1];

type Asked = z.infer<typeof rareFormQuestion>;

const inbreedingOf = ({ breeding }: Asked) => (breeding === 'selfing' ? 1 : 0);

/** How many plants keep a form that few of them carry. */
export function RareForm({ question }: { question: Question<Asked> }) {
  return (
    <QuestionPart id="rare" title="Keep what is rare">
      <QuestionForm action="/reference/keeping-variety#rare" question={question}>
        <AskNumber question={question} name="plants" label="Plants that give seed" whole />
        <AskNumber
          question={question}
          name="frequency"
          label="The rare form"
          hint="Of all copies of its gene in the lot."
          unit="%"
        />
        <AskNumber
          question={question}
          name="genes"
          label="Genes with such a form"
          hint="All of them are to be kept; empty is one."
          whole
          optional
        />
        <AskChoice question={question} name="breeding" label="Plants" options={BREEDING_OPTIONS} />
        <AskNumber question={question} name="assurance" label="Assurance" unit="%" />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: Asked }) {
  const { plants, genes = 1 } = asked;
  const inbreeding = inbreedingOf(asked);
  const frequency = asked.frequency / 100;
  const kept = chanceOfKeepingAllele({ plants, frequency, inbreeding }) ** genes;
  const needed = plantsToKeepAllele({ frequency, assurance: asked.assurance / 100, inbreeding, genes });
  const what =
    genes === 1
      ? `a form carried by ${asked.frequency} in 100 copies is`
      : `such forms of ${formatCount(genes)} genes are all`;
  return (
    <div className="sheet grid gap-4">
      <p className="say">
        From {formatCount(plants)} plants {what} kept with a chance of <b>{formatChance(kept)}</b>.{' '}
        {Number.isFinite(needed)
          ? `It takes ${formatCount(needed)} plants for ${asked.assurance} in 100.`
          : 'No bank could grow plants enough for the assurance wanted.'}
      </p>
      <table className="ledger tight">
        <caption className="label pb-2 text-left">
          One form kept, in 100 regrowings, by its frequency and the plants that give seed
        </caption>
        <thead>
          <tr>
            <th scope="col">form</th>
            {PLANTS_SHOWN.map((count) => (
              <th key={count} scope="col" className="number">
                {count}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {FREQUENCIES_SHOWN.map((percent) => (
            <tr key={percent}>
              <th scope="row" className="figures">
                {percent} %
              </th>
              {PLANTS_SHOWN.map((count) => (
                <td key={count} className="number">
                  {formatPercentFigure(chanceOfKeepingAllele({ plants: count, frequency: percent / 100, inbreeding }))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
