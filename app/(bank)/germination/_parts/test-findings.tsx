import Link from 'next/link';
import { Caption } from '@/app/_components/caption';
import { IntervalStrips, type Strip } from '@/app/_components/interval-strips';
import { Notice } from '@/app/_components/notice';
import { formatDate } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { intervalIfUneven } from '@/lib/domain/germination/interval-if-uneven';
import { compareWithStandard } from '@/lib/domain/germination/minimum-standard';
import { type Estimate, summariseTest, type TestSummary } from '@/lib/domain/germination/result';
import { retestAdvice } from '@/lib/domain/germination/retest-advice';
import { toleranceVerdict } from '@/lib/domain/germination/tolerance-verdict';
import { compareTwoResults } from '@/lib/domain/germination/two-results';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';
import type { GerminationTestDetail } from '@/lib/server/queries/germination-test-detail';
import { ClassTable } from './class-table';
import { Finding } from './finding';
import { Source } from './method-card';
import {
  boundsOutwards,
  comparedInWords,
  heterogeneityInWords,
  LEVEL_IN_WORDS,
  resultInWords,
  TEST_LEVEL,
  unevenInWords,
} from './result-words';

/** What the test says: a sentence, the picture, the classes, and how far it can be believed. */
export function TestFindings({ test }: { test: GerminationTestDetail }) {
  const summary = summariseTest({ replicates: test.replicates, level: TEST_LEVEL });
  const now = { seeds: summary.seeds, normal: summary.totals.normal };
  const { before } = test;
  const compared =
    before &&
    compareTwoResults({ germinated: now.normal, seeds: now.seeds }, { germinated: before.normal, seeds: before.seeds });
  const rose = before !== null && now.normal / now.seeds > before.normal / before.seeds;
  // Advice to test again belongs to the test that speaks last for the lot.
  const speaksLast = test.newest === null && test.correctedByNumber === null;
  const advice = speaksLast
    ? retestAdvice(summary, compared && { ...compared, rose }, {
        treated: test.lot.treatment !== null,
        ofOneTime: test.ofOneTime.map(({ normal, seeds }) => ({ germinated: normal, seeds })),
      })
    : [];
  const uneven = intervalIfUneven(test.replicates, TEST_LEVEL);
  const differ = heterogeneityInWords(summary);
  // The standard counts hard seed, so its dishes do too.
  const unevenForStandard = intervalIfUneven(
    test.replicates.map(({ seeds, normal, hard }) => ({ seeds, normal: normal + hard })),
    TEST_LEVEL,
  );
  const standard = test.crop.minimumStandard;
  const minimumPercent = standard && Math.round(standard.proportion * 100);
  const strips: Strip[] = [
    { name: 'germination', ...summary.germination },
    ...(uneven?.ok ? [{ name: 'if uneven', proportion: uneven.mean, interval: uneven, quiet: true }] : []),
    { name: 'viability', ...summary.viability },
  ];
  if (before) strips.push({ name: before.number, ...estimateOf(before), quiet: true });
  return (
    <section className="sheet grid gap-5" aria-label="What the test says">
      <Caption text={resultInWords(summary)} />
      {advice.length > 0 && (
        <Notice kind="caution">
          <ul className="grid gap-1">
            {advice.map(({ reason, sentence }) => (
              <li key={reason}>{sentence}</li>
            ))}
          </ul>
        </Notice>
      )}
      {test.newest && (
        <p>
          The lot has been tested since:{' '}
          <Link href={testPath(test.newest.number)} className="figures text-ink underline underline-offset-3">
            {test.newest.number}
          </Link>{' '}
          of {formatDate(test.newest.finishedOn)}.
        </p>
      )}
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <div className="grid gap-3">
          <IntervalStrips
            strips={strips}
            standard={standard && { proportion: standard.proportion, label: `minimum standard, ${minimumPercent} %` }}
          />
          <p className="label">
            Germination {figureInWords(summary.germination)}, viability {figureInWords(summary.viability)}. Lines show
            where the truth lies {LEVEL_IN_WORDS} (Wilson interval, all replicates together)
            {uneven?.ok && '; “if uneven” lets each dish have its own germination (beta-binomial, profile likelihood)'}.
          </p>
        </div>
        <ClassTable summary={summary} />
      </div>
      <dl className="grid gap-3">
        <Finding term="Do the replicates agree?">
          {toleranceVerdict(summary)} {differ} {unevenInWords(uneven, test.replicates.length)}
        </Finding>
        {summary.totals.hard + summary.totals.fresh > 0 && (
          <Finding term="Hard and fresh seed">
            It counts as alive here. If only some of it was shown to be,{' '}
            <Link href={sideSamplesLink(summary)}>work out how much is alive</Link>.
          </Finding>
        )}
        {standard && minimumPercent && (
          <Finding term="Against the minimum standard">
            {compareWithStandard({ summary, minimumPercent, uneven: unevenForStandard }).sentence}{' '}
            <span className="quiet">The standard is one country's, for seed on sale, and for orientation only.</span>
            <Source mark={standard.mark} source={standard.source} />
          </Finding>
        )}
        {before && compared && (
          <Finding term="Against the lot's test before">
            {comparedInWords(before, now, compared, summary.withinTolerance !== false)}
          </Finding>
        )}
      </dl>
    </section>
  );
}

/** The calculator, with this test's counts filled in. */
function sideSamplesLink({ seeds, totals }: TestSummary): string {
  const { normal, hard, fresh } = totals;
  return `/reference/hard-and-dormant-seed?seeds=${seeds}&normal=${normal}&hard=${hard}&fresh=${fresh}`;
}

const estimateOf = ({ normal, seeds }: { normal: number; seeds: number }) => ({
  proportion: normal / seeds,
  interval: binomialInterval({ successes: normal, trials: seeds, level: TEST_LEVEL }),
});

function figureInWords(estimate: Estimate): string {
  const { lower, upper } = boundsOutwards(estimate);
  return `${Math.round(estimate.proportion * 1000) / 10} % (${lower}–${upper})`;
}
