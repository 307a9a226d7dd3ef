import { Facts } from '@/app/_components/facts';
import { Notice } from '@/app/_components/notice';
import { formatCount, formatTemperature } from '@/app/_format/figures';
import { optimismCaution } from '@/lib/domain/longevity/optimism-caution';
import { storageLife, viabilityAfter } from '@/lib/domain/longevity/storage-life';
import { HORIZON_DAYS } from '@/lib/domain/longevity/time-to-threshold';
import { yearsInWords } from '@/lib/domain/longevity/years-in-words';
import type { StoredSeed } from '@/lib/server/queries/stored-seed';
import { type AskedStorage, DAYS_PER_YEAR } from './asked-storage';
import { moistureOf, percentOf } from './words';

/** How long it takes, in a sentence, with what must be said of it. */
export function Answer({ stored: { seed }, asked }: { stored: StoredSeed; asked: AskedStorage }) {
  const { condition, goal, before } = asked;
  const life = storageLife(seed, condition, goal);
  const after = viabilityAfter(seed, condition, goal);
  if (!life.ok || !after.ok) return <Notice kind="caution">{life.ok ? null : life.reason}</Notice>;
  const caution = optimismCaution({ ...goal, ...condition, daysPerProbit: life.daysPerProbit });
  return (
    <section className="grid gap-4" aria-label="Answer">
      <div className="sheet grid gap-2">
        {before && (
          <p>
            {yearsInWords(before.days)} at {formatTemperature(before.temperatureC)} and{' '}
            {moistureOf(before.moisturePercent)} moisture first take it from {percentOf(before.initialViability)} to{' '}
            {percentOf(goal.initialViability)}.
          </p>
        )}
        <p className="say">
          At {formatTemperature(condition.temperatureC)} and {moistureOf(condition.moisturePercent)} moisture it takes{' '}
          <b>{yearsInWords(life.days)}</b> from {percentOf(goal.initialViability)} to {percentOf(goal.wantedViability)}.
        </p>
        {life.notes.map((note) => (
          <p key={note} className="quiet text-sm">
            {note}
          </p>
        ))}
      </div>
      {life.freezing && <Notice kind="caution">{life.freezing}</Notice>}
      {caution && <Notice kind="caution">{caution}</Notice>}
      <Facts
        facts={[
          [`Alive after ${yearsInWords(goal.days)}`, percentOf(after.viability)],
          ['One probit lost in', yearsInWords(life.daysPerProbit)],
          ['Half alive after', halfLife(seed, asked)],
          [
            'As the equation has it',
            life.days > HORIZON_DAYS ? `${formatCount(life.days / DAYS_PER_YEAR)} years: arithmetic, never seen` : null,
          ],
        ]}
      />
    </section>
  );
}

function halfLife(seed: StoredSeed['seed'], { condition, goal }: AskedStorage): string | null {
  if (goal.initialViability <= 0.5) return null;
  const life = storageLife(seed, condition, { ...goal, wantedViability: 0.5 });
  return life.ok ? yearsInWords(life.days) : null;
}
