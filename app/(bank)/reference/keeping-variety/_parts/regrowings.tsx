import type { z } from 'zod';
import { CurvePicture } from '@/app/_components/curve-picture';
import { formatChance, formatCount } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import {
  chancesOfStaying,
  sizeOverGenerations,
  varietyKept,
} from '@/lib/domain/regrow/diversity/loss-over-generations';
import type { regrowingsQuestion } from '@/lib/schemas/calculators/keeping-variety';
import { AskNumber, AskText } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';

type Asked = z.infer<typeof regrowingsQuestion>;

/** What a row of regrowings does to a variety. */
export function Regrowings({ question }: { question: Question<Asked> }) {
  return (
    <QuestionPart id="regrowings" title="What many regrowings do">
      <QuestionForm action="/reference/keeping-variety#regrowings" question={question}>
        <AskText
          question={question}
          name="sizes"
          label="Parents at each regrowing"
          hint="As many as really count, one figure a regrowing: 40 40 12 40"
          className="sm:col-span-2"
        />
        <AskNumber question={question} name="regrowingFrequency" label="The rare form, at first" unit="%" />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked: { sizes, regrowingFrequency } }: { asked: Asked }) {
  const steady = sizeOverGenerations(sizes);
  const kept = varietyKept(sizes);
  const staying = chancesOfStaying({
    effectiveSize: steady,
    frequency: regrowingFrequency / 100,
    generations: sizes.length,
  });
  const smallest = Math.min(...sizes);
  return (
    <div className="sheet grid gap-4">
      <p className="say">
        After {formatCount(sizes.length)} {sizes.length === 1 ? 'regrowing' : 'regrowings'}{' '}
        <b>{(100 * kept).toFixed(1)} %</b> of the variety is left, as after as many from {steady.toFixed(1)} plants each
        time.
        {staying.ok
          ? ` A form carried by ${regrowingFrequency} in 100 copies at first is still there with a chance of ${formatChance(staying.chances.at(-1) as number)}.`
          : ' With so many plants a form of that frequency hardly gets lost by chance.'}
      </p>
      {sizes.length > 1 && smallest < steady && (
        <p className="max-w-prose">
          The regrowing from {formatCount(smallest)} plants alone cost {(100 / (2 * smallest)).toFixed(1)} %: the
          smallest one rules the whole row.
        </p>
      )}
      <CurvePicture
        label={`Variety kept over ${sizes.length} regrowings: ${(100 * kept).toFixed(1)} % at the end.`}
        xTitle="regrowings"
        yTitle="left, in 100"
        xRange={[0, sizes.length]}
        xTicks={roundTicks(0, sizes.length, Math.min(6, sizes.length)).filter(Number.isInteger)}
        curves={[
          {
            name: 'variety',
            tone: 'leaf',
            points: [0, ...sizes].map((_, index) => [index, varietyKept(sizes.slice(0, index))] as const),
          },
          ...(staying.ok
            ? [
                {
                  name: 'chance that the rare form is there',
                  tone: 'indigo' as const,
                  dashed: true,
                  points: [[0, 1] as const, ...staying.chances.map((chance, index) => [index + 1, chance] as const)],
                },
              ]
            : []),
        ]}
      />
    </div>
  );
}
