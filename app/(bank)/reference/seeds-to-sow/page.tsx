import type { Metadata } from 'next';
import type { z } from 'zod';
import { CurvePicture } from '@/app/_components/curve-picture';
import { formatCount, formatGrams, formatPercent } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import { fitLot } from '@/lib/domain/longevity/lot-model';
import { chooseLotPrior } from '@/lib/domain/longevity/priors';
import { chanceFromSowing } from '@/lib/domain/regrow/chance-from-sowing';
import { chanceOfAtLeast } from '@/lib/domain/regrow/raising-chance';
import { seedsToSow, seedsToSowUncertain } from '@/lib/domain/regrow/seeds-to-sow';
import { weightFromSeeds } from '@/lib/domain/stock/seed-count';
import { seedsToSowQuestion } from '@/lib/schemas/calculators/seeds-to-sow';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskNumber } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { type Address, readQuestion } from '../_parts/read-question';

const SLUG = 'seeds-to-sow';
const EXAMPLE = {
  plants: '40',
  alive: '43',
  tested: '50',
  emergence: '70',
  assurance: '95',
  thousandSeedWeight: '3.2',
};
/** Points of a curve: enough for a smooth one, few enough for a page at once. */
const POINTS = 48;

export const metadata: Metadata = { title: 'Seeds to sow' };

export default async function SeedsToSowPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const question = readQuestion(seedsToSowQuestion, await searchParams, EXAMPLE);
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionForm action={`/reference/${SLUG}`} question={question}>
        <AskNumber question={question} name="plants" label="Plants wanted" whole />
        <AskNumber question={question} name="alive" label="Seeds that grew in its test" whole />
        <AskNumber question={question} name="tested" label="Seeds set in that test" whole />
        <AskNumber
          question={question}
          name="emergence"
          label="Emergence"
          hint="Of seed that grows in a dish, how much comes up in your bed."
          unit="%"
        />
        <AskNumber
          question={question}
          name="assurance"
          label="Assurance"
          hint="How often such a sowing should be enough."
          unit="%"
        />
        <AskNumber question={question} name="thousandSeedWeight" label="Weight of 1000 seeds" unit="g" optional />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
      <Method />
    </CalculatorPage>
  );
}

type Asked = z.infer<typeof seedsToSowQuestion>;

function Answer({ asked }: { asked: Asked }) {
  const { plants, alive, tested } = asked;
  const emergence = asked.emergence / 100;
  const assurance = asked.assurance / 100;
  const prior = chooseLotPrior({ borrowed: false, outsideFittedRange: false });
  const posterior = fitLot({ tests: [{ probitsLost: 0, germinated: alive, sown: tested }], prior });
  const needed = seedsToSowUncertain({ plants, posterior, probitsLost: 0, emergence, assurance });
  const found = alive / tested;
  const chanceFound = found * emergence;
  const neededIfExact = found > 0 ? seedsToSow({ plants, chancePerSeed: chanceFound, assurance }) : null;
  if (!Number.isFinite(needed)) {
    return (
      <section className="sheet" aria-label="Answer">
        <p className="say">
          No number of seeds can promise {formatCount(plants)} plants with {asked.assurance} % assurance: too likely
          hardly any of this seed is alive. Test more of it, or choose another lot.
        </p>
      </section>
    );
  }
  const most = Math.ceil(needed * 1.25);
  const lot = { posterior, probitsLost: 0, emergence };
  const counts = Array.from({ length: POINTS + 1 }, (_, i) => Math.round(plants + ((most - plants) * i) / POINTS));
  const uncertain = counts.map((seeds) => [seeds, chanceFromSowing(lot, plants, seeds)] as const);
  const exact = counts.map((seeds) => [seeds, chanceOfAtLeast(plants, seeds, chanceFound)] as const);
  const grams = (seeds: number) =>
    asked.thousandSeedWeight === undefined
      ? ''
      : ` (${formatGrams(weightFromSeeds({ seeds, thousandSeedWeightG: asked.thousandSeedWeight }))})`;
  return (
    <section className="sheet grid gap-4" aria-label="Answer">
      <p className="say">
        Sow{' '}
        <b>
          {formatCount(needed)} seeds{grams(needed)}
        </b>
        : then {asked.assurance} in 100 such sowings give {formatCount(plants)} plants or more.
      </p>
      <p className="max-w-prose">
        {neededIfExact === null
          ? 'No seed grew in the test; what is sown rests on what is believed of untested lots.'
          : `If the lot’s viability were exactly ${formatPercent(found)}, ${formatCount(neededIfExact)} seeds${grams(neededIfExact)} would do; the rest pays for having tested only ${formatCount(tested)}.`}{' '}
        On the average it takes {formatCount(Math.ceil(plants / Math.max(chanceFound, 1e-9)))}, which would fall short
        about every other time.
      </p>
      <CurvePicture
        label={`Chance of ${plants} plants or more by the seeds sown: it reaches ${asked.assurance} in 100 at ${needed} seeds.`}
        xTitle="seeds sown"
        yTitle={`chance of ${formatCount(plants)} plants or more, in 100`}
        xRange={[plants, Math.max(most, plants + 1)]}
        xTicks={roundTicks(plants, Math.max(most, plants + 1))}
        curves={[
          { name: 'with what the test leaves open', tone: 'leaf', points: uncertain },
          { name: 'if the test were exactly right', tone: 'ink-2', dashed: true, points: exact },
        ]}
        level={{ at: assurance, name: `assurance, ${asked.assurance} in 100` }}
        marks={[{ at: needed, name: 'seeds to sow' }]}
      />
    </section>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="seeds-to-sow.md"
      equation={
        <p>
          The fewest <i>n</i> with ∫ P(Bin(<i>n</i>, <i>e</i> Φ(<i>v</i>)) ≥ <i>k</i>) <i>f</i>(<i>v</i>) d<i>v</i> ≥{' '}
          <i>a</i>: <i>k</i> plants, emergence <i>e</i>, assurance <i>a</i>; <i>f</i> is what the test and the usual
          belief of a new lot leave open of its probit viability <i>v</i>.
        </p>
      }
      limits={
        <p>
          Seeds are taken to come up each by itself: a dry bed, a slug or a late frost takes many at once, and no sum
          pays for that. Aged seed comes up worse in a bed than in a dish. The test is taken to be of today; a lot’s own
          page also knows how it has aged since.
        </p>
      }
      source={<p>The binomial distribution; 95 % assurance is common practice.</p>}
      checked={
        <p>
          R (qnbinom, pbinom), 720 cases: the same to the last seed where viability is known; within 1 % or one seed of
          a dense integration where it is not.
        </p>
      }
    />
  );
}
