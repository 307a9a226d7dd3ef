import type { Metadata } from 'next';
import Link from 'next/link';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Filter } from '@/app/_components/list/filter-bar';
import { Pager } from '@/app/_components/list/pager';
import { CropFilter, JudgementFilter } from '@/app/_components/list/usual-filters';
import { PageHead } from '@/app/_components/page-head';
import { PrintButton } from '@/app/_components/print-button';
import { formatDate } from '@/app/_format/figures';
import { nextSeason } from '@/lib/domain/calendar/season';
import { regrowQuerySchema } from '@/lib/schemas/regrow-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getBank } from '@/lib/server/queries/bank';
import { countJudged } from '@/lib/server/queries/collection-size';
import { findCropsInUse, findRegrow } from '@/lib/server/queries/regrow';
import { today } from '@/lib/server/today';
import { RegrowTable } from './_parts/regrow-table';

export const metadata: Metadata = { title: 'Regrow' };

const PAGE_SIZE = 25;
const PRINT_LIMIT = 2000;
const SEASONS_OFFERED = 6;

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function RegrowPage({ searchParams }: Props) {
  await requirePerson('visitor');
  const query = regrowQuerySchema.parse(await searchParams);
  const pageSize = query.print ? PRINT_LIMIT : PAGE_SIZE;
  const [{ rows, total }, crops, judged, bank] = await Promise.all([
    findRegrow({
      cropId: query.crop,
      season: query.season,
      action: query.action,
      search: query.q,
      page: query.page,
      pageSize,
    }),
    findCropsInUse(),
    countJudged(),
    getBank(),
  ]);
  const first = nextSeason(today(), bank.sowingMonth);
  const seasons = Array.from({ length: SEASONS_OFFERED }, (_, index) => first + index);
  const pages = Math.max(1, Math.ceil(total / pageSize));
  return (
    <>
      <PageHead
        title="What to regrow"
        below={`Most urgent first. Judged ${judged.judgedOn ? formatDate(judged.judgedOn) : 'not yet'} from ${judged.lots} lots of ${judged.accessions} accessions.`}
      >
        {query.print ? (
          <>
            <Link href={pageAddress(query, { print: undefined })} className="button">
              Back to the list
            </Link>
            <PrintButton />
          </>
        ) : (
          <Link href={pageAddress(query, { print: 'all', page: 1 })} className="button">
            Print the list
          </Link>
        )}
      </PageHead>
      <search className="no-print">
        <form className="flex flex-wrap items-end gap-3" action="/regrow">
          <label className="grid gap-1">
            <span className="label">Find</span>
            <input name="q" type="search" defaultValue={query.q} className="field w-48!" placeholder="name or number" />
          </label>
          <CropFilter crops={crops} chosen={query.crop} />
          <Filter
            name="season"
            label="By season"
            value={query.season?.toString() ?? ''}
            all="any season"
            options={seasons.map((season) => ({ value: String(season), label: `needed by ${season}` }))}
          />
          <JudgementFilter chosen={query.action} />
          <button type="submit" className="button">
            Show
          </button>
        </form>
      </search>
      {rows.length === 0 ? (
        <p className="sheet">
          {judged.accessions === 0 ? (
            <>
              No accession yet. <Link href="/collection/accessions/new">Add the first one</Link>.
            </>
          ) : (
            <>
              Nothing matches. <Link href="/regrow">Show every accession</Link>.
            </>
          )}
        </p>
      ) : (
        <RegrowTable rows={rows} />
      )}
      <Pager
        page={query.page}
        pages={pages}
        href={(page) => pageAddress(query, { page })}
        back="More urgent"
        forth="Less urgent"
      />
      <p className="label max-w-prose">
        <JudgementMark action="regrow" /> sow it; <JudgementMark action="test-first" /> a test decides;{' '}
        <JudgementMark action="leave" /> nothing to do yet. The line, the plants needed and the emergence are set in{' '}
        <Link href="/settings">Settings</Link> or with the crop.
      </p>
    </>
  );
}

type Query = ReturnType<typeof regrowQuerySchema.parse>;

function pageAddress(query: Query, change: Partial<Query>): string {
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...query, ...change })) {
    if (value !== undefined && value !== '' && !(name === 'page' && value === 1)) parameters.set(name, String(value));
  }
  const text = parameters.toString();
  return text ? `/regrow?${text}` : '/regrow';
}
