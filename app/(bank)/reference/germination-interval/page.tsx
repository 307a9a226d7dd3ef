import type { Metadata } from 'next';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';
import { formatPercent } from '@/app/_format/figures';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import { germinationIntervalSchema, INTERVAL_LEVELS } from '@/lib/schemas/calculators/germination-interval';
import { requirePerson } from '@/lib/server/auth/require-person';
import { CalculatorPage } from '../_parts/calculator-page';
import { MethodFoldOut } from '../_parts/method-fold-out';
import { AskChoice, AskNumber } from '../_parts/question-fields';
import { QuestionForm } from '../_parts/question-form';
import { type Address, readQuestion } from '../_parts/read-question';

const SLUG = 'germination-interval';
const EXAMPLE = { germinated: '45', seeds: '50', level: '95' };
const METHODS = [
  { method: 'wilson', name: 'Wilson' },
  { method: 'exact', name: 'exact' },
  { method: 'jeffreys', name: 'Jeffreys' },
] as const;

export const metadata: Metadata = { title: 'How sure is a germination figure' };

export default async function GerminationIntervalPage({ searchParams }: { searchParams: Promise<Address> }) {
  await requirePerson('visitor');
  const question = readQuestion(germinationIntervalSchema, await searchParams, EXAMPLE);
  return (
    <CalculatorPage slug={SLUG}>
      <QuestionForm
        action={`/reference/${SLUG}`}
        question={question}
        fields={Object.keys(germinationIntervalSchema.shape)}
      >
        <AskNumber question={question} name="germinated" label="Seeds that grew" whole />
        <AskNumber question={question} name="seeds" label="Seeds set" whole />
        <AskChoice
          question={question}
          name="level"
          label="How sure"
          optional
          options={INTERVAL_LEVELS.map((value) => ({ value, label: `${value} in 100` }))}
        />
      </QuestionForm>
      {question.input && <Answer {...question.input} level={Number(question.input.level ?? 95) / 100} />}
      <MethodFoldOut
        page="germination-interval.md"
        equation={
          <p>
            Wilson: all <i>p</i> with (<i>s/n</i> − <i>p</i>)² ≤ <i>z</i>² <i>p</i>(1 − <i>p</i>)/<i>n</i>; <i>s</i> of{' '}
            <i>n</i> seeds grew, <i>z</i> is the normal quantile of the level. Exact and Jeffreys: quantiles of beta
            distributions.
          </p>
        }
        limits={
          <p>
            It takes the seeds for a fair sample, each by itself. Dishes that differ by more than chance make it too
            narrow. It speaks of the day of the test, not of next year.
          </p>
        }
        source={
          <p>
            Wilson 1927, J. Am. Stat. Assoc. 22:209–212; Clopper & Pearson 1934, Biometrika 26:404–413; Brown, Cai &
            DasGupta 2001, Statistical Science 16:101–133 (cited from memory).
          </p>
        }
        checked={<p>R, 906 combinations of count and level: largest relative difference 2 × 10⁻¹⁴.</p>}
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
      <table className="ledger">
        <thead>
          <tr>
            <th scope="col">interval</th>
            <th scope="col" className="number">
              lower, %
            </th>
            <th scope="col" className="number">
              upper, %
            </th>
          </tr>
        </thead>
        <tbody>
          {strips.map(({ name, interval }) => (
            <tr key={name}>
              <td>{name}</td>
              <td className="number">{(interval.lower * 100).toFixed(2)}</td>
              <td className="number">{(interval.upper * 100).toFixed(2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
