import Link from 'next/link';
import { Notice } from '@/app/_components/notice';
import { constantsUncertainty } from '@/lib/domain/longevity/constants-uncertainty';
import { lowMoistureLimitPercent } from '@/lib/domain/longevity/low-moisture-limit';
import { usableCondition } from '@/lib/domain/longevity/storage-life';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import type { AskedStorage } from './asked-storage';
import { moistureOf } from './words';

/** What the answer rests on: whose constants, how they are known, how far off they may be. */
export function Grounds({ stored, asked }: { stored: StoredSeed; asked: AskedStorage }) {
  const { seed, constants, cropName, borrowed, borrowedBecause } = stored;
  const { KE, CW, CH, CQ } = seed.constants;
  return (
    <section className="grid gap-3" aria-labelledby="grounds">
      <h2 id="grounds">What it rests on</h2>
      {borrowed && (
        <Notice kind="note">
          <b>Borrowed constants</b>: fitted to {constants.name}, not to {cropName}. {borrowedBecause}
        </Notice>
      )}
      <div className="sheet grid gap-2 *:max-w-prose">
        <p>
          Constants of{' '}
          <Link href={`/reference#${constants.id}`} className="text-ink underline underline-offset-3">
            {constants.name}
          </Link>
          :{' '}
          <span className="figures">
            KE {KE}, CW {CW}, CH {CH}, CQ {CQ}
          </span>
          .
        </p>
        <p className="wrap-anywhere">
          <b>{constants.mark}</b>: {constants.source}
        </p>
        <p>
          Drying below <b>{moistureOf(lowMoistureLimitPercent(seed))}</b> gains nothing{' '}
          {seed.constantsRange.lowMoistureLimitPercent === undefined
            ? `(the moisture at rest in air of 10.6 % humidity at 20 °C${stored.oilKnown ? '' : ', with oil taken as none, for it is not known'}).`
            : '(as it came with the constants).'}{' '}
          Limits seen in the cold are higher than those seen in the warmth.
        </p>
        <p>{uncertaintyInWords(stored, asked)}</p>
        <p>A lot ages in its own way: its tests count for more than this page. A lot’s forecast puts both together.</p>
      </div>
    </section>
  );
}

function uncertaintyInWords({ seed, constants }: StoredSeed, { condition }: AskedStorage): string {
  const usable = usableCondition(seed, condition);
  if (!usable.ok) return 'There is no forecast here whose uncertainty could be told.';
  const uncertainty = constantsUncertainty({
    ...constants,
    moisturePercent: Math.max(1, usable.moistureUsedPercent),
  });
  if (!uncertainty)
    return 'No standard errors came with these constants, so nobody can say how far off the years may be.';
  const { leastFactor, cautiousFactor } = uncertainty;
  return `The standard errors published for KE and CW alone leave the years open by a factor of ${factor(leastFactor)} to ${factor(cautiousFactor)} either way, nineteen times in twenty: how the two errors go together was not published, so take the larger. Errors of the temperature terms come on top.`;
}

const factor = (value: number): string => (value < 10 ? value.toFixed(1) : String(Math.round(value)));
