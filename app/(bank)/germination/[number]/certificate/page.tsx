import type { Metadata } from 'next';
import Link from 'next/link';
import { notFound } from 'next/navigation';
import type { ReactNode } from 'react';
import { Caption } from '@/app/_components/caption';
import { Notice } from '@/app/_components/notice';
import { PageHead } from '@/app/_components/page-head';
import { PrintButton } from '@/app/_components/print-button';
import { formatDate } from '@/app/_format/figures';
import { testPath } from '@/app/_format/links';
import { readParameter } from '@/app/_format/read-parameter';
import { intervalIfUneven } from '@/lib/domain/germination/interval-if-uneven';
import { summariseTest } from '@/lib/domain/germination/result';
import { toleranceVerdict } from '@/lib/domain/germination/tolerance-verdict';
import { requirePerson } from '@/lib/server/auth/require-person';
import { getTestCertificate, type TestCertificate } from '@/lib/server/queries/test-certificate';
import { today } from '@/lib/server/today';
import {
  boundsOutwards,
  heterogeneityInWords,
  LEVEL_IN_WORDS,
  resultInWords,
  TEST_LEVEL,
  unevenInWords,
} from '../../_parts/result-words';
import { CertificateTable } from './_parts/certificate-table';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Certificate of ${readParameter((await params).number)}` };
}

/** One sheet of paper about a finished test, for use inside the bank. */
export default async function CertificatePage({ params }: Props) {
  await requirePerson('visitor');
  const certificate = await getTestCertificate(readParameter((await params).number));
  if (!certificate) notFound();
  const { test, bankName } = certificate;
  const summary = summariseTest({ replicates: test.replicates, level: TEST_LEVEL });
  const germination = boundsOutwards(summary.germination);
  const viability = boundsOutwards(summary.viability);
  const uneven = unevenInWords(intervalIfUneven(test.replicates, TEST_LEVEL), test.replicates.length);
  return (
    <div className="paper-upright grid max-w-3xl gap-5 print:block print:max-w-none print:space-y-2">
      <PageHead
        above={
          <>
            {bankName}
            <span className="no-print">
              {' '}
              · <Link href={testPath(test.number)}>back to {test.number}</Link>
            </span>
          </>
        }
        title={
          <>
            Germination test <span className="figures font-medium">{test.number}</span>
          </>
        }
        below="For use inside this seed bank. This is no official seed-testing certificate."
      >
        <PrintButton />
      </PageHead>
      {test.correctedByNumber && (
        <Notice kind="caution">
          <b>This test was corrected by {test.versions.at(-1)?.number ?? test.correctedByNumber}.</b> This sheet shows
          it as it was first written; do not go by it.
        </Notice>
      )}
      <dl className="grid grid-cols-1 gap-x-8 gap-y-2 sm:grid-cols-2 print:grid-cols-2 print:gap-y-1">
        <Line term="Variety">{test.lot.accessionName}</Line>
        <Line term="Crop">
          {test.crop.name}, <i>{test.crop.scientificName}</i>
        </Line>
        <Line term="Accession">
          <span className="figures">{test.lot.accessionNumber}</span>
        </Line>
        <Line term="Lot">
          <span className="figures">{test.lot.number}</span>, harvested {formatDate(test.lot.harvestedOn)}
        </Line>
        <Line term="Set and finished">
          {formatDate(test.setOn)} to {formatDate(test.finishedOn)}
        </Line>
        <Line term="Packet">{test.packet ? <span className="figures">{test.packet.number}</span> : 'not noted'}</Line>
        <Line term="Method">{test.method ?? 'not noted'}</Line>
        <Line term={certificate.writtenByHand ? 'Written down by' : 'Counted by'}>{countersInWords(certificate)}</Line>
        {test.lot.treatment && <Line term="Treated with">{test.lot.treatment}: neither food nor feed</Line>}
      </dl>
      <section className="grid gap-2 print:gap-1" aria-labelledby="result-title">
        <h2 id="result-title">Result</h2>
        <Caption text={resultInWords(summary)} />
        <p>
          Germination {summary.roundedPercentages.normal} % ({germination.lower}–{germination.upper}), viability{' '}
          {Math.round(summary.viability.proportion * 100)} % ({viability.lower}–{viability.upper}) of {summary.seeds}{' '}
          seeds. In brackets: where the lot itself lies {LEVEL_IN_WORDS} (Wilson interval, all replicates together). It
          speaks of the seed in this lot on the day the test was set; seed ages.
        </p>
      </section>
      <CertificateTable replicates={test.replicates} summary={summary} />
      <section className="grid gap-1" aria-labelledby="agree-title">
        <h2 id="agree-title">Do the replicates agree?</h2>
        <p>
          {toleranceVerdict(summary)} {heterogeneityInWords(summary)} {uneven}
        </p>
      </section>
      {test.notes && (
        <section className="grid gap-1" aria-labelledby="notes-title">
          <h2 id="notes-title">Notes</h2>
          {linesOf(test.notes).map(({ line, key }) => (
            <p key={key} className="wrap-anywhere">
              {line}
            </p>
          ))}
        </section>
      )}
      <div className="whole grid gap-5 pt-10 print:gap-2">
        <div className="grid grid-cols-2 gap-8">
          <p className="border-t border-ink pt-1 text-sm">Signed</p>
          <p className="border-t border-ink pt-1 text-sm">Place and date</p>
        </div>
        {/* Names the test again: on a second sheet it is all that tells what was signed. */}
        <p className="label">
          Germination test {test.number} of lot {test.lot.number}: {bankName}, printed {formatDate(today())}. Made by
          the bank's own counts and rules, for its own use. Seed that is sold or crosses a border needs a test by
          whoever local law names.
        </p>
      </div>
    </div>
  );
}

/** A paragraph each, so that a page breaks between notes rather than within a short one. */
const linesOf = (notes: string) =>
  notes
    .split('\n')
    .map((line, index) => ({ line, key: `${index} ${line}` }))
    .filter(({ line }) => line.trim() !== '');

function countersInWords({ countedBy }: TestCertificate): string {
  return countedBy.length === 0 ? 'not noted' : countedBy.join(', ');
}

function Line({ term, children }: { term: string; children: ReactNode }) {
  return (
    <div className="whole min-w-0">
      <dt className="label">{term}</dt>
      <dd className="wrap-anywhere font-semibold">{children}</dd>
    </div>
  );
}
