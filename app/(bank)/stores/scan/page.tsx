import type { Metadata } from 'next';
import { PageHead } from '@/app/_components/page-head';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findByCode, findOpenStockTakes } from '@/lib/server/queries/scanned';
import { today } from '@/lib/server/today';
import { StoresTabs } from '../_parts/stores-tabs';
import { CameraPart } from './_parts/camera-part';
import { CodeField } from './_parts/code-field';
import { ScannedCard } from './_parts/scanned-card';

export const metadata: Metadata = { title: 'Scan' };

/** Longer than any code that a label can bear. */
const MOST_LETTERS = 500;

interface Props {
  searchParams: Promise<{ code?: string | string[] }>;
}

export default async function ScanPage({ searchParams }: Props) {
  const person = await requirePerson('visitor');
  const { code: given } = await searchParams;
  const code = (Array.isArray(given) ? given[0] : given)?.slice(0, MOST_LETTERS).trim() ?? '';
  const [scanned, stockTakes] = await Promise.all([code ? findByCode(code) : null, findOpenStockTakes()]);
  return (
    <>
      <PageHead title="Scan" below="Hold a label's code before the camera, or type its number." />
      <StoresTabs here="scan" />
      <div className="grid items-start gap-6 lg:grid-cols-2">
        <div className="grid min-w-0 gap-4">
          <CameraPart />
          <CodeField
            // A hand scanner types into an empty field, however often.
            key={code}
            typed={scanned ? '' : code}
            error={code && !scanned ? notFoundWords(code) : null}
          />
        </div>
        <div aria-live="polite" id="found" className="min-w-0 scroll-mt-4">
          {scanned ? (
            <ScannedCard
              scanned={scanned}
              mayAct={mayActAs(person, 'volunteer')}
              stockTakes={stockTakes}
              today={today()}
            />
          ) : (
            // What was not found stands beside the field; here it is told to those who cannot see it.
            <p className={code ? 'sr-only' : 'quiet'}>{code ? notFoundWords(code) : 'What you scan is shown here.'}</p>
          )}
        </div>
      </div>
    </>
  );
}

const notFoundWords = (code: string) =>
  `No packet, lot or tray of this collection has the number ‘${code.length > 60 ? `${code.slice(0, 60)}…` : code}’.`;
