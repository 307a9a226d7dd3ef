import type { Metadata } from 'next';
import Link from 'next/link';
import { EmptyState } from '@/app/_components/list/empty-state';
import { Pager } from '@/app/_components/list/pager';
import { PageHead } from '@/app/_components/page-head';
import { PrintButton } from '@/app/_components/print-button';
import { formatDateRange } from '@/app/_format/date-range';
import { formatCount } from '@/app/_format/figures';
import { listHref } from '@/app/_format/list-href';
import { germinationReportQuery } from '@/lib/schemas/germination-report-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getBank } from '@/lib/server/queries/bank';
import { getGerminationReport } from '@/lib/server/queries/germination-report';
import { today } from '@/lib/server/today';
import { CropTable, MethodTable } from './_parts/crop-table';
import { ReportPeriod } from './_parts/report-period';
import { ReportSummary } from './_parts/report-summary';
import { ReportTests } from './_parts/report-tests';
import { SeedsUsed } from './_parts/seeds-used';

export const metadata: Metadata = { title: 'Report of germination tests' };

const PATH = '/germination/report';

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function GerminationReportPage({ searchParams }: Props) {
  await requirePerson('visitor');
  const day = today();
  const query = germinationReportQuery(day).parse(await searchParams);
  const [report, bank] = await Promise.all([getGerminationReport(query), getBank()]);
  const { from, to, whole } = query;
  const period = { from, to };
  return (
    <div className="paper-across grid gap-6">
      <PageHead
        above={
          <Link href="/germination" className="text-ink-2 underline underline-offset-3">
            Germination
          </Link>
        }
        title="Report of germination tests"
        below={`${bank.name}: tests finished ${formatDateRange(from, to)}`}
      >
        {report.sums.tests > 0 && (
          <>
            <a href={listHref('/api/germination-report', period, {})} download className="button">
              Save as CSV
            </a>
            {whole || report.pages === 1 ? (
              <PrintButton />
            ) : (
              <Link href={listHref(PATH, { ...period, whole: 'yes' }, {})} className="button" prefetch={false}>
                All {formatCount(report.sums.tests)} on one page, to print
              </Link>
            )}
          </>
        )}
      </PageHead>
      <ReportPeriod path={PATH} period={period} today={day} />
      {report.sums.tests === 0 ? (
        <EmptyState>
          <p className="say">No germination test was finished in this time.</p>
          <p>Choose another time above.</p>
        </EmptyState>
      ) : (
        <>
          <ReportSummary report={report} />
          <CropTable rows={report.byCrop} />
        </>
      )}
      <SeedsUsed seeds={report.seeds} period={period} />
      {report.sums.tests > 0 && (
        <>
          <ReportTests report={report} />
          <Pager
            label="Pages of tests"
            page={report.page}
            pages={report.pages}
            href={(page) => listHref(PATH, period, { page })}
            back="Earlier"
            forth="Further"
          />
          <MethodTable rows={report.byMethod} />
        </>
      )}
    </div>
  );
}
