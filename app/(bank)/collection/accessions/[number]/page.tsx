import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import { Facts } from '@/app/_components/facts';
import { History } from '@/app/_components/history';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { SharedSeed } from '@/app/_components/shared-seed';
import { TestsUnderWay } from '@/app/_components/tests-under-way';
import { formatCount, formatDate } from '@/app/_format/figures';
import { accessionPath, cropPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { duplicateWarning, stockInWords } from '@/app/_format/stock-words';
import { sharingLabel } from '@/lib/domain/stock/sharing-terms';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getAccession } from '@/lib/server/queries/accessions';
import { findHistory } from '@/lib/server/queries/history';
import { findStock } from '@/lib/server/queries/stock';
import { AccessionLots } from './_parts/accession-lots';
import { Decisions } from './_parts/decisions';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: readParameter((await params).number) };
}

export default async function AccessionPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const accession = await getAccession(readParameter((await params).number));
  if (!accession) notFound();
  const [history, packets] = await Promise.all([
    findHistory([{ entity: 'accession', ids: [accession.id] }]),
    findStock({ lotIds: accession.lots.map(({ id }) => id) }),
  ]);
  const whereItIs = stockInWords(packets);
  const warning = duplicateWarning(packets);
  const { crop, judgement } = accession;
  const path = accessionPath(accession.number);
  return (
    <>
      <PageHead
        above={
          <>
            <Link href={cropPath(crop.id)}>{crop.name}</Link> · <i>{crop.scientificName}</i>
          </>
        }
        title={
          <>
            {accession.name} <span className="figures font-normal">{accession.number}</span>
          </>
        }
      >
        {accession.lots.length > 0 && (
          <Link href={`${path}/ledger`} className="button">
            Ledger
          </Link>
        )}
        {mayActAs(person, 'steward') && (
          <Link href={`${path}/edit`} className="button">
            Change
          </Link>
        )}
        {mayActAs(person, 'volunteer') && (
          <Link href={`/collection/lots/log?accession=${encodeURIComponent(accession.number)}`} className="button main">
            Log a cleaned lot
          </Link>
        )}
      </PageHead>
      {judgement && accession.lots.length > 0 && (
        <div className="grid justify-items-start gap-2">
          <JudgementMark
            action={judgement.action as 'regrow' | 'test-first' | 'leave'}
            label={
              judgement.action === 'regrow' && judgement.season !== null ? `Regrow ${judgement.season}` : undefined
            }
          />
          <p className="say">{judgement.sentence}</p>
        </div>
      )}
      <Facts
        facts={[
          ['Donor or source', accession.donor],
          ['Acquired', accession.acquiredOn && formatDate(accession.acquiredOn)],
          ['Origin', accession.origin],
          ['Lots', formatCount(accession.lots.length)],
          ['Seed left', judgement && formatCount(judgement.seedsLeft)],
          ['Sharing', sharingLabel(accession.sharing)],
          ['Terms of sharing', accession.sharingTerms],
        ]}
      />
      {accession.notes && <p className="max-w-prose whitespace-pre-line">{accession.notes}</p>}
      {whereItIs && <p className="max-w-prose">{whereItIs}</p>}
      {warning && <Notice kind="note">{warning}</Notice>}
      <TestsUnderWay lotIds={accession.lots.map((lot) => lot.id)} nameLots />
      <AccessionLots accession={accession} />
      <SharedSeed lotIds={accession.lots.map((lot) => lot.id)} />
      <Decisions accession={accession} />
      <History lines={history} />
    </>
  );
}
