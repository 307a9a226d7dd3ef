import Link from 'next/link';
import { ChanceBar } from '@/app/_components/chance-bar';
import { JudgementMark } from '@/app/_components/judgement-mark';
import { Sentence } from '@/app/_components/sentence';
import { formatCount, formatPercent, formatPercentFigure } from '@/app/_format/figures';
import { lotPath } from '@/app/_format/links';
import type { EvaluatedLot } from '@/lib/server/judging/evaluate-lot';

/** One lot on the page where its accession is decided: its reasons, and its chance of being below the line each season. */
export function LotSeasons({ evaluated }: { evaluated: EvaluatedLot }) {
  const { lot, judgement, seedsLeft } = evaluated;
  const { viabilityNow, threshold, chanceBelowNow } = judgement;
  return (
    <section className="sheet grid gap-3" aria-label={`Lot ${lot.number}`}>
      <div className="flex flex-wrap items-baseline justify-between gap-3">
        <h2>
          <Link href={lotPath(lot.number)} className="figures text-ink underline underline-offset-3">
            {lot.number}
          </Link>{' '}
          <span className="quiet text-base font-normal">harvest {lot.harvestedOn.slice(0, 4)}</span>
        </h2>
        <JudgementMark action={judgement.action} />
      </div>
      <p className="max-w-prose">
        <Sentence text={judgement.reasons.join(' ')} />
      </p>
      <dl className="flex flex-wrap gap-x-8 gap-y-2">
        {viabilityNow && (
          <Figure label="alive now">
            {formatPercent(viabilityNow.median)}{' '}
            <span className="quiet">
              {formatPercentFigure(viabilityNow.lower)}–{formatPercentFigure(viabilityNow.upper)}
            </span>
          </Figure>
        )}
        {threshold !== null && <Figure label="the line">{formatPercent(threshold)}</Figure>}
        <Figure label="seed left">{formatCount(seedsLeft)}</Figure>
        {judgement.seedsNeeded !== null && (
          <Figure label={`seed needed in ${judgement.nextSeason}`}>
            {Number.isFinite(judgement.seedsNeeded) ? formatCount(judgement.seedsNeeded) : 'no number is enough'}
          </Figure>
        )}
        <Figure label="last safe season">{lastSafeInWords(judgement)}</Figure>
      </dl>
      {chanceBelowNow !== null && (
        <div>
          <p className="label pb-1">Chance of being below the line</p>
          <dl className="grid max-w-4xl grid-cols-2 gap-x-5 gap-y-3 sm:grid-cols-3 lg:grid-cols-6">
            {[{ season: 0, chance: chanceBelowNow }, ...judgement.chanceBelowBySeason].map(({ season, chance }) => (
              <div key={season}>
                <dt className="figures">{season === 0 ? 'now' : season}</dt>
                <dd>
                  <ChanceBar chance={chance} action={judgement.action} />
                </dd>
              </div>
            ))}
          </dl>
        </div>
      )}
    </section>
  );
}

function Figure({ label, children }: { label: string; children: React.ReactNode }) {
  return (
    <div>
      <dt className="label">{label}</dt>
      <dd className="figures">{children}</dd>
    </div>
  );
}

function lastSafeInWords({ rescue, lastSafeSeason }: EvaluatedLot['judgement']): string {
  if (rescue) return 'past';
  if (lastSafeSeason === null) return 'not known';
  return lastSafeSeason === 'beyond horizon' ? 'far off' : String(lastSafeSeason);
}
