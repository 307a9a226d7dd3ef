import type { Metadata } from 'next';
import Link from 'next/link';
import { redirect } from 'next/navigation';
import { TRAY_LABELS_PATH } from '@/app/_components/labels/labels-address';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { benchPath } from '@/app/_format/bench-path';
import { formatCount, formatDate } from '@/app/_format/figures';
import { lotPath, testPath } from '@/app/_format/links';
import { traysSetQuery } from '@/lib/schemas/plan-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findTraysSet, type TraySet } from '@/lib/server/queries/trays-set';
import { temperaturesInShort } from '../../_parts/method-words';

export const metadata: Metadata = { title: 'Tests set' };

interface Props {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export default async function TestsSetPage({ searchParams }: Props) {
  await requirePerson('volunteer');
  const trays = await findTraysSet(traysSetQuery.parse(await searchParams));
  if (trays.length === 0) redirect('/germination');
  const seeds = trays.reduce((sum, { dishes }) => sum + seedsIn(dishes), 0);
  return (
    <>
      <PageHead
        title={trays.length === 1 ? 'The test is set' : `${trays.length} tests are set`}
        below="Label the dishes before you wet them."
      >
        <Link
          href={`${TRAY_LABELS_PATH}?trays=${encodeURIComponent(trays.map(({ number }) => number).join(','))}`}
          className="button main"
        >
          Print labels
        </Link>
        {/* A plain address: the bench is an app of its own, which also opens without a connection. */}
        <a href={benchPath()} className="button">
          To the bench
        </a>
        <Link href="/germination" className="button">
          To Germination
        </Link>
      </PageHead>
      <Notice kind="done">
        {formatCount(seeds)} seeds are laid out, and the ledger has them as taken out for{' '}
        {trays.length === 1 ? 'it' : 'them'}.
      </Notice>
      <div className="sheet overflow-x-auto p-0!">
        <table className="ledger stacked">
          <thead>
            <tr>
              <th scope="col">Test</th>
              <th scope="col">Lot</th>
              <th scope="col" className="number">
                Seeds
              </th>
              <th scope="col">From</th>
              <th scope="col">At</th>
              <th scope="col">First count</th>
            </tr>
          </thead>
          <tbody>
            {trays.map((tray) => (
              <TrayRow key={tray.number} tray={tray} />
            ))}
          </tbody>
        </table>
      </div>
    </>
  );
}

function TrayRow({ tray }: { tray: TraySet }) {
  return (
    <tr>
      <th scope="row" className="row-head min-w-0!">
        <Link href={testPath(tray.number)} className="figures inline-block py-1 text-ink underline underline-offset-3">
          {tray.number}
        </Link>
      </th>
      <td>
        <b>{tray.accessionName}</b> <span className="quiet">{tray.cropName}</span>
        <Link href={lotPath(tray.lotNumber)} className="figures block w-fit text-sm text-ink">
          {tray.lotNumber}
        </Link>
      </td>
      <td className="number" data-label="seeds">
        {formatCount(seedsIn(tray.dishes))}{' '}
        <span className="quiet">in {tray.dishes.length === 1 ? 'one dish' : `${tray.dishes.length} dishes`}</span>
        {tray.group !== null && <span className="quiet block text-sm">group {tray.group}</span>}
      </td>
      <td data-label="from">{tray.packetNumber}</td>
      <td data-label="at">
        {[tray.temperatures && temperaturesInShort(tray.temperatures), tray.light ? 'light' : null, tray.place]
          .filter(Boolean)
          .join(', ') || '–'}
      </td>
      <td data-label="first count" className="whitespace-nowrap">
        {formatDate(tray.firstCountOn)}
      </td>
    </tr>
  );
}

const seedsIn = (dishes: readonly number[]) => dishes.reduce((sum, seeds) => sum + seeds, 0);
