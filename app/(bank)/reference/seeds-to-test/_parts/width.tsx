import type { z } from 'zod';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { intervalHalfWidth } from '@/lib/domain/germination/sample-size/interval-width';
import { seedsForWidth } from '@/lib/domain/germination/sample-size/seeds-for-width';
import type { widthQuestion } from '@/lib/schemas/calculators/seeds-to-test';
import { LEVEL_CHOICE } from '../../_parts/level-choice';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import type { Question } from '../../_parts/read-question';

const SEEDS_SHOWN = [25, 50, 100, 200, 400];

type Asked = z.infer<typeof widthQuestion>;

/** A germination figure as sure as wanted. */
export function Width({ question }: { question: Question<Asked> }) {
  return (
    <QuestionPart id="width" title="For a figure as sure as wanted">
      <QuestionForm action="/reference/seeds-to-test#width" question={question}>
        <AskNumber question={question} name="expected" label="Germination expected" unit="%" />
        <AskNumber question={question} name="within" label="To within" hint="To either side." unit="points" />
        <AskChoice question={question} name="level" label="How sure" options={LEVEL_CHOICE} />
        <AskChoice
          question={question}
          name="method"
          label="Interval"
          options={[
            { value: 'wilson', label: 'Wilson, as on all screens' },
            { value: 'exact', label: 'exact, never too narrow' },
          ]}
        />
        <AskChoice
          question={question}
          name="basis"
          label="The width counted"
          options={[
            { value: 'expected', label: 'on average, at this germination' },
            { value: 'widest', label: 'at worst, whatever germinates' },
          ]}
        />
        <AskNumber question={question} name="available" label="Seeds to spare" whole optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: Asked }) {
  const interval = {
    germination: asked.expected / 100,
    level: Number(asked.level) / 100,
    method: asked.method,
    basis: asked.basis,
  };
  const found = seedsForWidth({ ...interval, halfWidth: asked.within / 100, seedsAvailable: asked.available });
  return (
    <>
      {!found.ok && (
        <Notice kind="caution">
          Not reachable with {formatCount(found.seedsAvailable)} seeds: they bring the figure to within{' '}
          {points(found.halfWidthReached)} points.
        </Notice>
      )}
      <div className="sheet grid gap-4">
        {found.ok && (
          <p className="say">
            Test{' '}
            <b>
              {formatCount(found.seeds)} {found.seeds === 1 ? 'seed' : 'seeds'}
            </b>
            : the figure is then sure to within {points(found.halfWidth)} points to either side,{' '}
            {asked.basis === 'expected' ? 'on average' : 'whatever germinates'}.
          </p>
        )}
        <table className="ledger">
          <caption className="label pb-2 text-left">Half of the interval’s width, in points, by seeds tested</caption>
          <thead>
            <tr>
              {SEEDS_SHOWN.map((seeds) => (
                <th key={seeds} scope="col" className="number">
                  {seeds}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            <tr>
              {SEEDS_SHOWN.map((seeds) => (
                <td key={seeds} className="number">
                  {points(intervalHalfWidth(seeds, interval))}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </div>
    </>
  );
}

const points = (proportion: number) => (proportion * 100).toFixed(1);
