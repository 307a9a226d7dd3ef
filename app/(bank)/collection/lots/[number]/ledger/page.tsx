import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { ScopedLedger } from '@/app/_components/scoped-ledger';
import { balanceInWords } from '@/app/_format/balance-words';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { wholeLedgerQuery } from '@/lib/schemas/ledger-query';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findLedger } from '@/lib/server/queries/ledger';
import { getLotPlate } from '@/lib/server/queries/ledger-scope';
import { getLotBalance } from '@/lib/server/queries/packet-ledgers';

interface Props {
  params: Promise<{ number: string }>;
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Ledger of ${readParameter((await params).number)}` };
}

export default async function LotLedgerPage({ params, searchParams }: Props) {
  const person = await requirePerson('visitor');
  const lot = await getLotPlate(readParameter((await params).number));
  if (!lot) notFound();
  const [list, held] = await Promise.all([
    findLedger(wholeLedgerQuery(await searchParams), { lotId: lot.id }),
    getLotBalance(lot),
  ]);
  return (
    <ScopedLedger
      scope="lot"
      number={lot.number}
      name={lot.accessionName}
      path={lotPath(lot.number)}
      below={`In all its packets: ${balanceInWords(held)} seeds.`}
      list={list}
      mayChange={mayActAs(person, 'volunteer')}
    />
  );
}
