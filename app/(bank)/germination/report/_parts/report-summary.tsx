import { Caption } from '@/app/_components/caption';
import { Facts } from '@/app/_components/facts';
import { formatCount } from '@/app/_format/figures';
import { VIABILITY_KIND_LABELS } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { GerminationReport } from '@/lib/server/queries/germination-report';
import { reportInWords, shareInWords } from './report-words';

/** The period in a sentence and a strip of sums. */
export function ReportSummary({ report }: { report: GerminationReport }) {
  const { sums, traysGivenUp, viabilityTests } = report;
  return (
    <section className="grid gap-3" aria-label="The report in short">
      <Caption text={reportInWords(report)} />
      <Facts
        facts={[
          ['Tests finished', formatCount(sums.tests)],
          ['Lots tested', formatCount(sums.lots)],
          ['Seeds set', formatCount(sums.seeds)],
          ['Normal seedlings', formatCount(sums.normal)],
          ['Replicates outside tolerance', shareInWords(sums.outside, sums.comparable)],
          ['Lots likely below their line', formatCount(sums.lotsBelow)],
          ['Tests given up', formatCount(traysGivenUp)],
          [
            'Tetrazolium and cut tests',
            viabilityTests.length === 0
              ? 'none'
              : viabilityTests
                  .map(
                    ({ kind, tests, seeds }) =>
                      `${formatCount(tests)} ${plural(kind, tests)}, ${formatCount(seeds)} seeds`,
                  )
                  .join('; '),
          ],
        ]}
      />
    </section>
  );
}

const plural = (kind: keyof typeof VIABILITY_KIND_LABELS, tests: number) =>
  `${VIABILITY_KIND_LABELS[kind]}${tests === 1 ? '' : 's'}`;
