import Link from 'next/link';
import { ViabilityTable } from '@/app/(bank)/germination/viability/_parts/viability-table';
import { findViabilityTestsOfLot } from '@/lib/server/queries/viability-tests';

interface Props {
  lotId: string;
  lotNumber: string;
  mayRecord: boolean;
}

/** The lot's tetrazolium and cut tests; corrected ones are left out. Without any, only the way to record one. */
export async function LotViabilityTests({ lotId, lotNumber, mayRecord }: Props) {
  const rows = await findViabilityTestsOfLot(lotId);
  if (rows.length === 0 && !mayRecord) return null;
  const path = `/germination/viability/new?lot=${encodeURIComponent(lotNumber)}`;
  return (
    <section className="grid gap-3" aria-labelledby="viability-tests">
      <h2 id="viability-tests">Tetrazolium and cut tests</h2>
      {rows.length > 0 && <ViabilityTable rows={rows} caption={`Tetrazolium and cut tests of lot ${lotNumber}`} />}
      {mayRecord && (
        <div className="no-print flex flex-wrap items-center gap-3">
          <Link href={path} className="button">
            Record a tetrazolium or cut test
          </Link>
          {rows.length === 0 && <span className="quiet">None yet.</span>}
        </div>
      )}
    </section>
  );
}
