import type { Metadata } from 'next';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';
import { formatPercent } from '@/app/_format/figures';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import { germinationByDishesSchema } from '@/lib/schemas/calculators/germination-by-dishes';
import { germinationIntervalSchema } from '@/lib/schemas/calculators/germination-interval';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { LEVEL_CHOICE } from '../_parts/level-choice';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskChoice, AskNumber, AskText } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { QuestionPart } from '../_parts/question-part';
import { type Address, readQuestion } from '../_parts/read-question';
import { BoundsTable } from './_parts/bounds-table';
import { DishesAnswer } from './_parts/dishes-answer';

const SLUG = 'germination-interval';
const EXAMPLE = { germinated: '45', seeds: '50', level: '95' };
const DISHES_EXAMPLE = { dishes: '46, 38, 49, 41', seedsADish: '50', minimum: '80' };
const METHODS = [
  { method: 'wilson', name: 'Wilson' },
  { method: 'exact', name: 'exact' },
  { method: 'jeffreys', name: 'Jeffreys' },
] as const;

export const metadata: Metadata = { title: 'How sure is a germination figure' };

export default async function GerminationIntervalPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const address = await searchParams;
  const question = readQuestion(germinationIntervalSchema, address, EXAMPLE);
  const dishes = readQuestion(germinationByDishesSchema, address, DISHES_EXAMPLE);
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionForm action={`/reference/${SLUG}`} question={question}>
        <AskNumber question={question} name="germinated" label="Seeds that grew" whole />
        <AskNumber question={question} name="seeds" label="Seeds set" whole />
        <AskChoice question={question} name="level" label="How sure" optional options={LEVEL_CHOICE} />
      </QuestionForm>
      {question.input && <Answer {...question.input} level={Number(question.input.level ?? 95) / 100} />}
      <QuestionPart
        id="by-dishes"
        title="Dish by dish"
        says="With the count of each dish it shows whether they agree, and how much less sure the figure is when they do not."
      >
        <QuestionForm action={`/reference/${SLUG}#by-dishes`} question={dishes}>
          <AskText
            question={dishes}
            name="dishes"
            label="Normal seedlings in each dish"
            hint="Such as 46, 44, 49, 41."
          />
          <AskNumber question={dishes} name="seedsADish" label="Seeds set in each dish" whole />
          <AskNumber
            question={dishes}
            name="alike"
            label="Correlation within a dish"
            hint="0 to 1, if many tests have shown it."
            optional
          />
          <AskNumber question={dishes} name="minimum" label="Minimum to compare with" unit="%" optional />
          <AskNumber question={dishes} name="otherGrew" label="Another test: seeds that grew" whole optional />
          <AskNumber question={dishes} name="otherSeeds" label="Another test: seeds set" whole optional />
        </QuestionForm>
        {dishes.input && <DishesAnswer asked={dishes.input} />}
      </QuestionPart>
      <MethodFoldOut
        page="germination-interval.md"
        equation={
          <p>
            Wilson: all <i>p</i> with (<i>s/n</i> − <i>p</i>)² ≤ <i>z</i>² <i>p</i>(1 − <i>p</i>)/<i>n</i>; <i>s</i> of{' '}
            <i>n</i> seeds grew, <i>z</i> is the normal quantile of the level. Exact and Jeffreys: quantiles of beta
            distributions. Uneven dishes: all means <i>p</i> with 2(<i>ℓ</i>(best) − <i>ℓ</i>(<i>p</i>)) ≤ <i>z</i>²,
            where <i>ℓ</i> is the beta-binomial log likelihood of the dishes at whatever correlation suits <i>p</i>{' '}
            best.
          </p>
        }
        limits={
          <p>
            It takes the seeds for a fair sample, each by itself. Dishes that differ by more than chance make it too
            narrow; the interval for uneven dishes allows for that, but four dishes tell little of how uneven they are:
            in simulations it held the truth 90 to 97 times in 100, from two dishes 82 to 99 times, where Wilson’s fell
            to 43. It speaks of the day of the test, not of next year.
          </p>
        }
        source={
          <p>
            Wilson 1927, J. Am. Stat. Assoc. 22:209–212; Clopper & Pearson 1934, Biometrika 26:404–413; Brown, Cai &
            DasGupta 2001, Statistical Science 16:101–133; Skellam 1948, J. R. Stat. Soc. B 10:257–261 (cited from
            memory). The tolerated range: 7 CFR 201.55 (2015), or derived. Profile likelihood for uneven dishes: our own
            choice.
          </p>
        }
        checked={
          <p>
            R, 1208 combinations of count and level: largest relative difference 2 × 10⁻¹⁴; for uneven dishes 68
            combinations, 4 × 10⁻¹³.
          </p>
        }
      />
    </CalculatorPage>
  );
}

function Answer({ germinated, seeds, level }: { germinated: number; seeds: number; level: number }) {
  const proportion = germinated / seeds;
  const strips: Strip[] = METHODS.map(({ method, name }, index) => ({
    name,
    proportion,
    interval: binomialInterval({ successes: germinated, trials: seeds, level, method }),
    quiet: index > 0,
  }));
  const [shown] = strips as [Strip];
  return (
    <section className="sheet grid gap-4" aria-label="Answer">
      <p className="say">
        {formatPercent(proportion)} of these seeds grew; the lot they came from is likely between{' '}
        <b>
          {formatPercent(shown.interval.lower)} and {formatPercent(shown.interval.upper)}
        </b>
        .
      </p>
      <IntervalStrips strips={strips} standard={null} />
      <BoundsTable rows={strips.map(({ name, interval }) => ({ name, ...interval }))} />
    </section>
  );
}
