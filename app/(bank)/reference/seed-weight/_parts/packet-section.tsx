import type { z } from 'zod';
import { Notice } from '@/app/_components/notice';
import { formatCount } from '@/app/_format/figures';
import { type SeedSample, seedsByWeight } from '@/lib/domain/stock/seeds-by-weight';
import type { packetSchema } from '@/lib/schemas/calculators/seed-weight';
import { LEVEL_CHOICE } from '../../_parts/level-choice';
import { MethodFoldOut } from '../../_parts/method-fold-out';
import { AskChoice, AskNumber } from '../../_parts/question-fields';
import { QuestionForm } from '../../_parts/question-form';
import type { Question } from '../../_parts/read-question';

type Asked = z.infer<typeof packetSchema>;

interface Props {
  action: string;
  question: Question<Asked>;
  /** the replicates above; null while they are wrong */
  sample: SeedSample | null;
}

/** A packet on the balance: how many seeds are in it, and how sure is that? */
export function PacketSection({ action, question, sample }: Props) {
  return (
    <>
      <p className="max-w-prose">Worked out with the replicates above: the same seed, as dry.</p>
      <QuestionForm action={action} question={question}>
        <AskNumber question={question} name="packetGrams" label="Seed in the packet" unit="g" />
        <AskNumber question={question} name="packetStep" label="Balance reads to" unit="g" />
        <AskChoice question={question} name="packetLevel" label="How sure" options={LEVEL_CHOICE} />
      </QuestionForm>
      {question.input && sample && <Answer asked={question.input} sample={sample} />}
      {question.input && !sample && <Notice kind="note">The replicates above come first.</Notice>}
      <Method />
    </>
  );
}

function Answer({ asked, sample }: { asked: Asked; sample: SeedSample }) {
  const percent = asked.packetLevel;
  const found = seedsByWeight({
    weightG: asked.packetGrams,
    sample,
    stepG: asked.packetStep,
    level: Number(percent) / 100,
  });
  if (!found.ok) {
    return (
      <Notice kind="caution">
        The replicates differ so much, or are so few, that no upper end can be given. Weigh more replicates.
      </Notice>
    );
  }
  return (
    <section className="sheet grid gap-3" aria-label="Seeds in the packet">
      <p className="say">
        {asked.packetGrams} g hold about <b>{formatCount(found.seeds)} seeds</b>: between {formatCount(found.lower)} and{' '}
        {formatCount(found.upper)}, {percent} times in 100.
      </p>
    </section>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="seed-weight.md"
      equation={
        <p>
          All <i>N</i> with (<i>W</i> − <i>N x̄</i>/<i>n</i>)² ≤ <i>t</i>² <i>V</i>(<i>N</i>), <i>V</i> = <i>N s</i>²/
          <i>n</i> + <i>N</i>² (<i>s</i>²/<i>r</i> + <i>d₁</i>²/12)/<i>n</i>² + <i>d₂</i>²/12: the packet’s own seeds,
          the unsure mean, and the steps <i>d₁</i>, <i>d₂</i> of the two balances; <i>t</i> with <i>r</i> − 1 degrees of
          freedom. Grams for <i>N</i> seeds: <i>N x̄</i>/<i>n</i> + <i>t</i> √<i>V</i>, with a one-sided <i>t</i>.
        </p>
      }
      limits={
        <p>
          It takes replicates and packet for fair samples of one well-mixed, equally dry lot. Big and small seeds part
          in a bag that is shaken: then it is too narrow.
        </p>
      }
      source={
        <p>Fieller’s argument for a ratio (general method); joining it with the packet’s own variation is ours.</p>
      }
      checked={
        <p>
          R root finding, 288 combinations: every end alike. 4000 simulated packets: the 95 % interval held the true
          number in 96.6 of 100, the grams held enough in 95.3 of 100.
        </p>
      }
    />
  );
}
