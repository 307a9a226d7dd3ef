import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ScopedLedger } from '@/app/_components/scoped-ledger';
import { accessionPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { wholeLedgerQuery } from '@/lib/schemas/ledger-query';
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
  const list = await findLedger(wholeLedgerQuery(await searchParams), { accessionId: accession.id });
  return (
    <ScopedLedger
      scope="accession"
      number={accession.number}
      name={accession.name}
      path={accessionPath(accession.number)}
      below="All lots of this accession."
      list={list}
      mayChange={mayActAs(person, 'volunteer')}
    />
  );
}
