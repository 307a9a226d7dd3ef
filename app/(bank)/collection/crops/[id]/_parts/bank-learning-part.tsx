import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { Notice } from '@/app/_components/notice';
import { bankLearningWords } from '@/app/_format/bank-learning-words';
import { formatCount, formatDate } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import { MethodFoldOut } from '@/app/(bank)/reference/_parts/method-fold-out';
import { figuresInOneLine, figuresToAdopt } from '@/lib/domain/longevity/bank-learning/figures-to-adopt';
import { type AdoptedPriors, getCropLearning } from '@/lib/server/queries/crop-learning';
import { BeliefPictures } from './belief-pictures';
import { LearntFigures } from './learnt-figures';
import { TakeOverButton } from './take-over-button';

interface Props {
  crop: { id: string; name: string; version: number };
  /** somebody asked for the reckoning, however many lots there are */
  asked: boolean;
  /** may take the figures over */
  steward: boolean;
}

/** What the crop's own lots say of its initial viability and rate of ageing: a suggestion until a steward takes it over. */
export async function BankLearningPart({ crop, asked, steward }: Props) {
  const answer = await getCropLearning(crop.id, asked);
  if (answer.kind === 'no-constants') return null;
  return (
    <section className="grid gap-3" aria-labelledby="learnt">
      <h2 id="learnt">What this bank's own tests say</h2>
      {answer.kind === 'on-request' ? (
        <p className="max-w-prose">
          {formatCount(answer.testedLots)} lots of it have been tested.{' '}
          <Link href={`${cropPath(crop.id)}?tests=read#learnt`} prefetch={false}>
            Read what they say together
          </Link>
          ; it takes some seconds.
        </p>
      ) : (
        <Learnt crop={crop} answer={answer} steward={steward} />
      )}
    </section>
  );
}

function Learnt({
  crop,
  answer: { learnt, adopted },
  steward,
}: Pick<Props, 'crop' | 'steward'> & {
  answer: Extract<Awaited<ReturnType<typeof getCropLearning>>, { kind: 'learnt' }>;
}) {
  const { learning } = learnt;
  if (!learning.ok) return <p className="quiet max-w-prose">{bankLearningWords(learning, crop.name)}</p>;
  const figures = figuresInOneLine(figuresToAdopt(learning));
  return (
    <>
      <div className="sheet grid gap-4">
        <Caption text={bankLearningWords(learning, crop.name)} />
        <LearntFigures learning={learning} />
        <BeliefPictures learning={learning} />
        <Grounds learnt={learnt} />
        {adopted && <InUse adopted={adopted} figures={figures} undoAt={steward ? `${cropPath(crop.id)}/edit` : null} />}
        {steward && adopted?.figures !== figures && (
          <TakeOverButton cropId={crop.id} version={crop.version} figures={figures} again={adopted !== null} />
        )}
      </div>
      <LearningMethod />
    </>
  );
}

function InUse({ adopted, figures, undoAt }: { adopted: AdoptedPriors; figures: string; undoAt: string | null }) {
  const current = adopted.figures === figures;
  return (
    <Notice kind={current ? 'note' : 'caution'}>
      <p>
        {current ? 'These figures are' : `Older figures (${adopted.figures}) are`} in use since{' '}
        {formatDate(adopted.on.toISOString().slice(0, 10))}, taken over by {adopted.byName} from{' '}
        {formatCount(adopted.tests)} tests of {formatCount(adopted.lots)} lots.
        {!current && ' The tests say something else by now.'}
      </p>
      {undoAt && (
        <p>
          To undo it, <Link href={undoAt}>empty them among the bank's own figures</Link>.
        </p>
      )}
    </Notice>
  );
}

function Grounds({
  learnt,
}: {
  learnt: Extract<Awaited<ReturnType<typeof getCropLearning>>, { kind: 'learnt' }>['learnt'];
}) {
  const { learning, moistureAssumed, outsideFittedRange, leftOut, publishedReason } = learnt;
  const some = (count: number) =>
    count === learning.lots
      ? `all ${formatCount(count)} lots`
      : `${formatCount(count)} of the ${formatCount(learning.lots)} lots`;
  const sentence = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);
  return (
    <ul className="grid max-w-prose list-disc gap-1 pl-5">
      <li>
        {sentence(some(learning.lotsTellingRate))} tell of the rate of ageing: they have two tests with ageing between
        them.
      </li>
      {moistureAssumed > 0 && (
        <li>Of {some(moistureAssumed)} the moisture was assumed: a wrong one passes for a fast or slow rate.</li>
      )}
      {outsideFittedRange > 0 && (
        <li>
          {sentence(some(outsideFittedRange))} were kept outside the conditions in which the constants were fitted.
        </li>
      )}
      {leftOut > 0 && (
        <li>
          {formatCount(leftOut)} tested {leftOut === 1 ? 'lot is' : 'lots are'} left out, because the equation says
          nothing of how {leftOut === 1 ? 'it was' : 'they were'} kept.
        </li>
      )}
      <li>What was expected before counts as three lots. {publishedReason}</li>
    </ul>
  );
}

function LearningMethod() {
  return (
    <MethodFoldOut
      page="bank-learning.md"
      equation={
        <>
          <p>
            Each lot's viability is Φ(K − e<sup>b</sup>·D), with D the ageing by the published equation. K and b differ
            from lot to lot as two normal distributions say. Their means and spreads are those that make all tests of
            all lots most plausible, K and b of each lot averaged out.
          </p>
          <p>The published figures weigh in as three lots. Of a few lots little is believed, of many much.</p>
        </>
      }
      limits={
        <p>
          Lots that share one store share its mistakes: a freezer warmer than its log passes for seed that ages fast.
          Lots are tested because somebody worried about them, and lots that failed without a test are missing. One lot
          unlike all others widens the spread for all.
        </p>
      }
      source={
        <p>
          Empirical Bayes with a marginal likelihood, a textbook method (from memory). The three lots are our own
          choice.
        </p>
      }
      checked={
        <p>
          A dense grid and a general maximiser in R: figures within 1e-6. Simulated crops: 90 % intervals hold the truth
          in 88 to 93 of 100.
        </p>
      }
    />
  );
}
