import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/_components/page-head';
import { ScopedLedger } from '@/app/_components/scoped-ledger';
import { accessionPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findLedger } from '@/lib/server/queries/ledger';
import { getAccessionPlate } from '@/lib/server/queries/ledger-scope';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Ledger of ${readParameter((await params).number)}` };
}

export default async function AccessionLedgerPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const accession = await getAccessionPlate(readParameter((await params).number));
  if (!accession) notFound();
  const { page } = ledgerQuery.pick({ page: true }).parse(await searchParams);
  const list = await findLedger({ ...ledgerQuery.parse({}), page }, { accessionId: accession.id });
  const path = accessionPath(accession.number);
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {accession.name} {accession.number}
          </Link>
        }
        title={`Ledger of ${accession.number}`}
        below="All lots of this accession."
      >
        {list.total > 0 && (
          <a href={`/api/ledger?accession=${encodeURIComponent(accession.number)}`} className="button" download>
            Save as CSV
          </a>
        )}
      </PageHead>
      <ScopedLedger
        list={list}
        path={`${path}/ledger`}
        of="packet and lot"
        caption={`Ledger of accession ${accession.number}, newest day first`}
        mayChange={mayActAs(person, 'volunteer')}
      />
    </>
  );
}
