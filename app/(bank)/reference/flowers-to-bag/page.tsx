import type { Metadata } from 'next';
import type { z } from 'zod';
import { CurvePicture } from '@/app/_components/curve-picture';
import { formatCount } from '@/app/_format/figures';
import { roundTicks } from '@/app/_format/ticks';
import { chanceOfSeeds, flowersToBag } from '@/lib/domain/pollination/flowers-to-bag';
import { flowersToBagQuestion } from '@/lib/schemas/calculators/flowers-to-bag';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskNumber } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { type Address, readQuestion } from '../_parts/read-question';

const SLUG = 'flowers-to-bag';
const EXAMPLE = {
  seeds: '1500',
  plants: '20',
  success: '60',
  seedsPerFruit: '45',
  seedsPerFruitSd: '18',
  assurance: '95',
};
const POINTS = 40;

export const metadata: Metadata = { title: 'Flowers to bag' };

export default async function FlowersToBagPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const question = readQuestion(flowersToBagQuestion, await searchParams, EXAMPLE);
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionForm action={`/reference/${SLUG}`} question={question}>
        <AskNumber question={question} name="seeds" label="Seeds wanted" whole />
        <AskNumber question={question} name="plants" label="Mother plants" whole />
        <AskNumber
          question={question}
          name="success"
          label="Bags that succeed"
          hint="Of bagged flowers, how many give a fruit with seed that is surely true."
          unit="%"
        />
        <AskNumber
          question={question}
          name="seedsPerFruit"
          label="Seeds in a fruit"
          hint="On the average, sound ones."
        />
        <AskNumber
          question={question}
          name="seedsPerFruitSd"
          label="Spread between fruits"
          hint="Standard deviation; left empty, all are alike."
          optional
        />
        <AskNumber question={question} name="assurance" label="Assurance" unit="%" />
      </QuestionForm>
      {question.input && <Answer asked={question.input} />}
      <Method />
    </CalculatorPage>
  );
}

type Asked = z.infer<typeof flowersToBagQuestion>;

function Answer({ asked: { assurance, success, seedsPerFruitSd = 0, ...asked } }: { asked: Asked }) {
  const fruit = { success: success / 100, seedsPerFruit: asked.seedsPerFruit, seedsPerFruitSd };
  const { forSeeds, perPlantForAll, perPlant } = flowersToBag({ ...asked, ...fruit, assurance: assurance / 100 });
  if (!Number.isFinite(forSeeds)) {
    return (
      <section className="sheet" aria-label="Answer">
        <p className="say">
          More than 20 000 flowers would be needed: nobody bags so many. Grow it in a cage, or for fewer seeds.
        </p>
      </section>
    );
  }
  const inAll = perPlant * asked.plants;
  const most = Math.max(inAll, Math.ceil(forSeeds * 1.3), 4);
  const points = Array.from({ length: POINTS + 1 }, (_, i) => Math.round((most * i) / POINTS)).map(
    (flowers) => [flowers, chanceOfSeeds({ flowers, seeds: asked.seeds, ...fruit })] as const,
  );
  const ruledBy =
    perPlantForAll * asked.plants > forSeeds
      ? `For the seed alone ${formatCount(forSeeds)} flowers in all would do; ${perPlantForAll} a plant are bagged so that every plant, with the same assurance, gives a fruit.`
      : `That every plant gives a fruit takes ${perPlantForAll} a plant; the seed wanted takes more.`;
  return (
    <section className="sheet grid gap-4" aria-label="Answer">
      <p className="say">
        Bag{' '}
        <b>
          {formatCount(perPlant)} {perPlant === 1 ? 'flower' : 'flowers'} on each of {formatCount(asked.plants)} plants
        </b>
        , {formatCount(inAll)} in all: then {formatCount(asked.seeds)} seeds or more come of it {assurance} times in
        100.
      </p>
      <p className="max-w-prose">
        {ruledBy} On the average these flowers give {formatCount(inAll * fruit.success * fruit.seedsPerFruit)} seeds.
      </p>
      <CurvePicture
        label={`Chance of ${asked.seeds} seeds or more by the flowers bagged: it reaches ${assurance} in 100 at ${forSeeds} flowers.`}
        xTitle="flowers bagged, in all"
        yTitle={`chance of ${formatCount(asked.seeds)} seeds or more, in 100`}
        xRange={[0, most]}
        xTicks={roundTicks(0, most)}
        curves={[{ name: 'chance of seed enough', tone: 'leaf', points }]}
        level={{ at: assurance / 100, name: `assurance, ${assurance} in 100` }}
        marks={[{ at: inAll, name: 'flowers to bag' }]}
      />
    </section>
  );
}

function Method() {
  return (
    <MethodFoldOut
      page="flowers-to-bag.md"
      equation={
        <p>
          The fewest <i>n</i> with Σ<sub>j</sub> Bin(<i>j</i>; <i>n</i>, <i>s</i>) P(seed of <i>j</i> fruits ≥ <i>S</i>)
          ≥ <i>a</i>; a flower succeeds with chance <i>s</i>, and the seed of <i>j</i> fruits is gamma distributed with
          mean <i>j</i>μ and variance <i>j</i>τ². Every one of <i>N</i> plants bears when (1 − (1 − <i>s</i>)
          <sup>k</sup>)<sup>N</sup> ≥ <i>a</i>.
        </p>
      }
      limits={
        <p>
          Flowers are taken to fail each by itself. A hot week or a storm takes all bags of a day: spread them over
          days. What is counted as success should include that the bag stayed shut and the tag was found again.
        </p>
      }
      source={<p>Derived here from the binomial and gamma distributions: our own choice of model.</p>}
      checked={
        <p>
          R (dbinom, pgamma), 576 chances: largest difference under 10⁻¹²; the fewest flowers the same in 216 cases.
        </p>
      }
    />
  );
}
