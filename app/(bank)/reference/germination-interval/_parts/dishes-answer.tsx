import type { ReactNode } from 'react';
import type { z } from 'zod';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';
import { formatCount } from '@/app/_format/figures';
import { boundsOutwards, heterogeneityInWords } from '@/app/(bank)/germination/_parts/result-words';
import { compareWithStandard } from '@/lib/domain/germination/minimum-standard';
import { summariseTest, type TestSummary } from '@/lib/domain/germination/result';
import { toleranceVerdict } from '@/lib/domain/germination/tolerance-verdict';
import { compareTwoResults, type GerminationCount } from '@/lib/domain/germination/two-results';
import {
  type UnevenDishesInterval,
  unevenDishesInterval,
  wilsonForAlikeSeeds,
} from '@/lib/domain/statistics/uneven-dishes-interval';
import type { germinationByDishesSchema } from '@/lib/schemas/calculators/germination-by-dishes';
import { BoundsTable } from './bounds-table';

type Asked = z.infer<typeof germinationByDishesSchema>;

/** Below this chance dishes are said to differ, and the wider interval is the one to go by. */
const SURPRISING = 0.05;

/** What the dishes of one test say: how sure they are, whether they agree, and how they stand against others. */
export function DishesAnswer({ asked }: { asked: Asked }) {
  const { dishes, seedsADish: seeds, minimum, alike } = asked;
  const summary = summariseTest({
    replicates: dishes.map((normal) => ({ seeds, normal, abnormal: 0, hard: 0, fresh: 0, dead: seeds - normal })),
  });
  const counts = dishes.map((successes) => ({ successes, trials: seeds }));
  const uneven = unevenDishesInterval({ dishes: counts });
  const differ = (summary.heterogeneity?.pValue ?? 1) < SURPRISING;
  const rows: { strip: Strip; inFull: string }[] = [
    { strip: { name: 'all seeds alike', ...summary.germination, quiet: differ }, inFull: 'all seeds alike (Wilson)' },
  ];
  if (uneven.ok) {
    const strip = { name: 'uneven dishes', proportion: uneven.mean, interval: uneven, quiet: !differ };
    rows.push({ strip, inFull: 'uneven dishes (beta-binomial)' });
  }
  if (alike !== undefined) {
    const interval = wilsonForAlikeSeeds({ dishes: counts, correlation: alike });
    const strip = { name: 'as correlated', proportion: summary.germination.proportion, interval, quiet: true };
    rows.push({ strip, inFull: `correlation ${alike} within a dish (Wilson)` });
  }
  const other =
    asked.otherGrew === undefined || asked.otherSeeds === undefined
      ? null
      : { germinated: asked.otherGrew, seeds: asked.otherSeeds };
  return (
    <section className="sheet grid gap-4" aria-label="Answer from the dishes">
      <Says summary={summary} uneven={differ ? uneven : null} />
      <IntervalStrips
        strips={rows.map(({ strip }) => strip)}
        standard={minimum === undefined ? null : { proportion: minimum / 100, label: `minimum, ${minimum} %` }}
      />
      <BoundsTable
        rows={rows.map(({ strip: { interval }, inFull }) => ({
          name: inFull,
          lower: interval.lower,
          upper: interval.upper,
        }))}
      />
      <dl className="grid gap-3">
        <Finding term="Do the dishes agree?">
          {toleranceVerdict(summary)} {heterogeneityInWords(summary)} <Unevenness uneven={uneven} summary={summary} />
        </Finding>
        {minimum !== undefined && (
          <Finding term="Against the minimum">
            {
              compareWithStandard({
                summary,
                minimumPercent: minimum,
                countsHardSeed: false,
                uneven: differ ? uneven : null,
              }).sentence
            }
          </Finding>
        )}
        {other && (
          <Finding term="Against the other test">
            {besideOther({ germinated: summary.totals.normal, seeds: summary.seeds }, other)}
          </Finding>
        )}
      </dl>
    </section>
  );
}

function Says({ summary, uneven }: { summary: TestSummary; uneven: UnevenDishesInterval | null }) {
  const { totals, seeds } = summary;
  const percent = Math.round((1000 * totals.normal) / seeds) / 10;
  const { lower, upper } = boundsOutwards({ interval: uneven?.ok ? uneven : summary.germination.interval });
  return (
    <p className="say">
      {formatCount(totals.normal)} of {formatCount(seeds)} seeds grew, {percent} %; the lot is likely between{' '}
      <b>
        {lower} and {upper} %
      </b>
      {uneven?.ok ? ', allowing for dishes that differ by more than chance.' : '.'}
    </p>
  );
}

function Unevenness({ uneven, summary }: { uneven: UnevenDishesInterval; summary: TestSummary }) {
  if (!uneven.ok) {
    return uneven.reason === 'nothing-differs' ? (
      <>Where all seeds grow, or none, dishes cannot show how uneven they may be.</>
    ) : (
      <>Such dishes cannot show how uneven they may be: the limits take all seeds as alike.</>
    );
  }
  const chance = summary.heterogeneity ? Math.round(summary.heterogeneity.pValue * 1000) / 1000 : 1;
  return (
    <span className="quiet">
      (Chi-square p = <span className="figures">{chance < 0.001 ? 'under 0.001' : chance}</span>; correlation of seeds
      within a dish, most likely <span className="figures">{uneven.correlation.toFixed(3)}</span>.)
    </span>
  );
}

function besideOther(first: GerminationCount, second: GerminationCount): string {
  const { difference, tolerance, compatible, pValue } = compareTwoResults(first, second);
  const points = Math.round(difference * 10) / 10;
  const usual = tolerance === null ? '' : `, and up to ${tolerance} is tolerated between two tests of so many seeds`;
  const chance = pValue < 0.001 ? 'less than once in 1000 times' : `${Math.round(pValue * 1000)} times in 1000`;
  return (
    `They are ${points} ${points === 1 ? 'point' : 'points'} apart${usual}; seed of one germination would differ so much ${chance}. ` +
    (compatible ? 'The two agree.' : 'The two do not agree: one is wrong, or the seed has changed.')
  );
}

function Finding({ term, children }: { term: string; children: ReactNode }) {
  return (
    <div className="max-w-prose">
      <dt className="label">{term}</dt>
      <dd>{children}</dd>
    </div>
  );
}
