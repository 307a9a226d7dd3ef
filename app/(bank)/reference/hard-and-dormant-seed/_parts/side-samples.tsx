import type { z } from 'zod';
import { formatCount } from '@/app/_format/figures';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import { aliveWithSideSamples } from '@/lib/domain/germination/dormancy/side-samples';
import { sideSamplesSchema } from '@/lib/schemas/calculators/hard-and-dormant-seed';
import { AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import { QuestionPart } from '../../_parts/question-part';
import { readQuestion } from '../../_parts/read-question';
import type { SectionProps } from '../../_parts/section-props';
import { germinationOf, inPercent } from './shares';
import { StripsAnswer } from './strips-answer';

const EXAMPLE = { seeds: '100', normal: '60', hard: '30', hardLooked: '10', hardAlive: '8' };
const ANSWER = 'Answer for side samples';

/** How much is alive when only some of the hard and fresh seed was looked at. */
export function SideSamples({ action, address }: SectionProps) {
  const question = readQuestion(sideSamplesSchema, address, EXAMPLE);
  return (
    <QuestionPart
      id="side-samples"
      title="Hard or fresh seed, some of it looked at"
      says="At the end of a test some seeds are hard or fresh. Scarify, chill, stain or cut some of them, and count how many are alive."
    >
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="seeds" label="Seeds set in the test" whole />
        <AskNumber question={question} name="normal" label="Normal seedlings" whole className="lg:col-span-2" />
        <AskNumber question={question} name="hard" label="Hard seeds" whole optional />
        <AskNumber question={question} name="hardLooked" label="Hard seeds looked at" whole optional />
        <AskNumber question={question} name="hardAlive" label="Of these alive" whole optional />
        <AskNumber question={question} name="fresh" label="Fresh seeds" whole optional />
        <AskNumber question={question} name="freshLooked" label="Fresh seeds looked at" whole optional />
        <AskNumber question={question} name="freshAlive" label="Of these fresh ones alive" whole optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
    </QuestionPart>
  );
}

function Answer({ asked }: { asked: z.infer<typeof sideSamplesSchema> }) {
  const { seeds, normal } = asked;
  const found = aliveWithSideSamples({
    seeds,
    normal,
    hard: { seeds: asked.hard, looked: asked.hardLooked, alive: asked.hardAlive },
    fresh: { seeds: asked.fresh, looked: asked.freshLooked, alive: asked.freshAlive },
  });
  if (!found.ok) {
    const [least, most] = found.between.map(inPercent);
    const kind = found.reason === 'hard-not-looked-at' ? 'hard' : 'fresh';
    return (
      <section className="sheet grid gap-3" aria-label={ANSWER}>
        <p className="say">
          Nobody has looked at the {kind} seed: of these seeds{' '}
          <b>
            between {least} and {most} %
          </b>{' '}
          are alive, and which it is only a side sample can tell.
        </p>
        <p className="max-w-prose">
          {kind === 'hard'
            ? 'Nick or rub some of the hard seeds and set them again: those that grow are alive.'
            : 'Chill some of the fresh seeds and set them again, or stain or cut them, and count those that are alive.'}
        </p>
      </section>
    );
  }
  const { lower, upper } = boundsOutwards({ interval: found });
  const carried = Math.round(found.carriedOver * seeds);
  return (
    <StripsAnswer
      label={ANSWER}
      says={
        <>
          {inPercent(found.proportion)} % of these seeds are alive; the lot is likely between{' '}
          <b>
            {lower} and {upper} %
          </b>
          .
        </>
      }
      strips={[
        { name: 'germinated', ...germinationOf(normal, seeds), quiet: true },
        { name: 'alive', proportion: found.proportion, interval: found },
      ]}
    >
      <p className="max-w-prose">
        {inPercent(normal / seeds)} % germinated.{' '}
        {carried === 0
          ? 'Every hard and fresh seed was looked at, so that nothing had to be carried over.'
          : `${formatCount(carried)} seeds were looked at by nobody; what the side sample showed was carried over to them, and the limits allow for that.`}
      </p>
    </StripsAnswer>
  );
}
