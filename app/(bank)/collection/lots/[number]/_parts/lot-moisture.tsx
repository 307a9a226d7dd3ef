import Link from 'next/link';
import { formatDate } from '@/app/_format/figures';
import { moisturePath } from '@/app/_format/links';
import { formatMoisture } from '@/app/_format/moisture';
import { moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { currentPerson } from '@/lib/server/auth/current-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getLotMoisture } from '@/lib/server/queries/lot-moisture';
import { SealDoubts } from '../moisture/_parts/seal-doubts';
import { trustInWords } from '../moisture/_parts/test-words';

/** The last moisture test of a lot in a line, and any doubt about a seal. */
export async function LotMoisturePart({ lotNumber }: { lotNumber: string }) {
  const [lot, person] = await Promise.all([getLotMoisture(lotNumber), currentPerson()]);
  if (!lot) return null;
  const mayRecord = person !== null && mayActAs(person, 'volunteer');
  const last = lot.tests.find(({ correctedByNumber }) => correctedByNumber === null);
  return (
    <section className="grid gap-3" aria-labelledby="moisture">
      <h2 id="moisture">Moisture</h2>
      <SealDoubts packets={lot.packets} mayRecord={mayRecord} />
      <div className="sheet flex flex-wrap items-center justify-between gap-3">
        {last ? (
          <p className="min-w-0 flex-1 basis-72">
            <b>{formatMoisture(last.moisturePercent)}</b> on {formatDate(last.testedOn)},{' '}
            {moistureMethod(last.method).label}
            {last.packet && (
              <>
                , packet <span className="figures">{last.packet.number}</span>
              </>
            )}
            .<span className="label block">{trustInWords(last)}</span>
          </p>
        ) : (
          <p>Never measured.</p>
        )}
        <div className="no-print flex flex-wrap gap-2">
          {(last || mayRecord) && (
            <Link href={moisturePath(lotNumber)} className="button">
              {last ? 'All moisture tests' : 'Moisture and limits'}
            </Link>
          )}
          {mayRecord && (
            <Link href={`${moisturePath(lotNumber)}/new`} className="button">
              Record a moisture test
            </Link>
          )}
        </div>
      </div>
    </section>
  );
}
