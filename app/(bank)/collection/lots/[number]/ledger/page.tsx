import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { PageHead } from '@/app/_components/page-head';
import { ScopedLedger } from '@/app/_components/scoped-ledger';
import { balanceInWords } from '@/app/_format/balance-words';
import { lotPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
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
  const query = ledgerQuery.pick({ page: true }).parse(await searchParams);
  const [list, held] = await Promise.all([
    findLedger({ ...ledgerQuery.parse({}), ...query }, { lotId: lot.id }),
    getLotBalance(lot),
  ]);
  const path = lotPath(lot.number);
  return (
    <>
      <PageHead
        above={
          <Link href={path}>
            {lot.accessionName} {lot.number}
          </Link>
        }
        title={`Ledger of ${lot.number}`}
        below={`In all its packets: ${balanceInWords(held)} seeds.`}
      >
        {list.total > 0 && (
          <a href={`/api/ledger?lot=${encodeURIComponent(lot.number)}`} className="button" download>
            Save as CSV
          </a>
        )}
      </PageHead>
      <ScopedLedger
        list={list}
        path={`${path}/ledger`}
        of="packet"
        caption={`Ledger of lot ${lot.number}, newest day first`}
        mayChange={mayActAs(person, 'volunteer')}
      />
    </>
  );
}
