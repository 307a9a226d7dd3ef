import Link from 'next/link';
import { Facts } from '@/app/_components/facts';
import { formatPercent, MONTH_NAMES } from '@/app/_format/figures';
import { cropPath } from '@/app/_format/links';
import type { CropDetail } from '@/lib/server/queries/crops';

/** What this bank has set for the crop itself; these win over the reference and over the bank's general rules. */
export function OwnFigures({ crop }: { crop: CropDetail }) {
  const facts = [
    ['Plants needed', crop.plantsNeeded],
    ['Line', thresholdInWords(crop)],
    ['Sown in', crop.sowingMonth && MONTH_NAMES[crop.sowingMonth - 1]],
    ['Emergence', crop.emergence && formatPercent(crop.emergence)],
    ['Initial viability expected, probits', pair(crop.priorInitialMean, crop.priorInitialSd)],
    ['Rate of ageing expected, log', pair(crop.priorLogRateMean, crop.priorLogRateSd)],
  ] as const;
  return (
    <section className="grid gap-3" aria-labelledby="own">
      <h2 id="own">The bank's own figures</h2>
      {facts.some(([, value]) => value !== null) ? (
        <Facts facts={facts} />
      ) : (
        <p className="quiet max-w-prose">
          None set: the reference and the rules in <Link href="/settings">Settings</Link> decide.{' '}
          <Link href={`${cropPath(crop.id)}/edit`}>Set some</Link>
        </p>
      )}
    </section>
  );
}

function thresholdInWords({ thresholdKind, thresholdValue }: CropDetail): string | null {
  if (thresholdKind === null || thresholdValue === null) return null;
  return thresholdKind === 'absolute'
    ? `${formatPercent(thresholdValue)} alive`
    : `${formatPercent(thresholdValue)} of what the lot began with`;
}

const pair = (mean: number | null, sd: number | null) => (mean === null || sd === null ? null : `${mean} ± ${sd}`);
