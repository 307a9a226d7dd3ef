import type { z } from 'zod';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { gramsForSeeds, type SeedSample } from '@/lib/domain/stock/seeds-by-weight';
import type { gramsSchema } from '@/lib/schemas/calculators/seed-weight';
import { LEVEL_CHOICE } from '../../_parts/level-choice';
import { formatUpOnBalance } from '../../_parts/on-balance';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import type { Question } from '../../_parts/read-question';
import { figures } from './weight-words';

type Asked = z.infer<typeof gramsSchema>;

interface Props {
  action: string;
  question: Question<Asked>;
  sample: SeedSample | null;
}

/** Seeds wanted: how many grams to weigh out so that enough are there? */
export function GramsSection({ action, question, sample }: Props) {
  return (
    <>
      <p className="max-w-prose">Worked out with the replicates above: the same seed, as dry.</p>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="seedsWanted" label="Seeds wanted" whole />
        <AskNumber question={question} name="gramsStep" label="Balance reads to" unit="g" />
        <AskChoice
          question={question}
          name="gramsAssurance"
          label="Chance that enough are there"
          options={LEVEL_CHOICE}
        />
      </QuestionForm>
      {question.input && sample && <Answer asked={question.input} sample={sample} />}
      {question.input && !sample && <Notice kind="note">The replicates above come first.</Notice>}
    </>
  );
}

function Answer({ asked, sample }: { asked: Asked; sample: SeedSample }) {
  const percent = asked.gramsAssurance;
  const { weightG, expectedG } = gramsForSeeds({
    seeds: asked.seedsWanted,
    sample,
    stepG: asked.gramsStep,
    assurance: Number(percent) / 100,
  });
  return (
    <section className="sheet grid gap-3" aria-label="Grams for the seeds wanted">
      <p className="say">
        Weigh out <b>{formatUpOnBalance(weightG, asked.gramsStep)}</b>: {percent} times in 100 at least{' '}
        {formatCount(asked.seedsWanted)} seeds are in it. On average they weigh {figures(expectedG)} g.
      </p>
    </section>
  );
}
