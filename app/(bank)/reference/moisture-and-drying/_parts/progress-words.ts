import { formatMoisture, formatMoment, formatStretch } from '@/app/_format/moisture';
import type { DryingProgress } from '@/lib/domain/moisture/drying-progress';

interface Asked {
  targetPercent: number;
  hourZero: string | null;
  /** of the last weighing */
  lastHours: number;
}

const CANNOT_SAY = {
  'fewer-than-3-weighings': 'Weigh at least three times: from fewer nobody can tell when drying ends.',
  'no-change':
    'The weight does not change by more than the balance shows: the seed has settled in this air, or it is too early to tell.',
  'taking-up-water': 'The seed is getting heavier: it takes up water from this air.',
  'no-levelling-off-seen':
    'The weight still falls in a straight line, so its end cannot be seen yet. Weigh again later.',
} as const;

/**
 * What the weighings say, as one or two sentences with the finding in ** **.
 *
 * @returns text for Caption
 * Checked in tests/app/progress-words.test.ts
 */
export function progressWords(progress: DryingProgress, asked: Asked): string {
  const target = formatMoisture(asked.targetPercent);
  if (!progress.ok) {
    return progress.reason === 'air-too-moist'
      ? `**This air is too moist**: it brings the seed to ${formatMoisture(progress.settlesAtPercent)}, and ${target} is wanted. Dry in drier air.`
      : `The weighing at ${formatMoment(progress.hours, asked.hourZero)} is **less than the dry matter of the seed**: some was spilled, the jar was not taken off alike, or the moisture at the start is wrong.`;
  }
  const now = formatMoisture(progress.moistureNowPercent);
  const { verdict } = progress;
  switch (verdict.kind) {
    case 'reached':
      return `**Dry enough**: ${now} now, ${target} wanted. Reached at the weighing of ${formatMoment(verdict.hours, asked.hourZero)}.`;
    case 'on-the-way':
      return `${now} now. ${arrival(verdict, target, asked)}`;
    case 'levels-off-above': {
      const level = formatMoisture(verdict.settlesAtPercent);
      return verdict.sure
        ? `${now} now. **It is not going to reach ${target}: the air is too moist**, and the seed levels off at ${level}${span(verdict)}. Dry in drier air.`
        : `${now} now. **It may not reach ${target}**: it seems to level off at ${level}${span(verdict)}, but the weighings leave ${target} possible. Weigh again.`;
    }
    case 'cannot-say': {
      const soonest =
        verdict.soonestHours === null
          ? ''
          : ` ${target} will not be reached before ${formatMoment(verdict.soonestHours, asked.hourZero)}.`;
      return `${now} now, ${target} wanted. **${CANNOT_SAY[verdict.reason]}**${soonest}`;
    }
  }
}

type OnTheWay = { hours: number; lowerHours: number; upperHours: number | null };

function arrival({ hours, lowerHours, upperHours }: OnTheWay, target: string, { hourZero, lastHours }: Asked): string {
  const when = `It will be at ${target} **about ${formatStretch(hours - lastHours)} after the last weighing**, at ${formatMoment(hours, hourZero)}`;
  const from = lowerHours - lastHours < 0.5 ? 'any time now' : formatStretch(lowerHours - lastHours);
  return upperHours === null
    ? `${when}; but it may also level off before that. Not sooner than ${from === 'any time now' ? 'now' : `${from} after it`}. Weigh again.`
    : `${when}; likely between ${from === 'any time now' ? 'now' : from} and ${formatStretch(upperHours - lastHours)}.`;
}

function span({ lowerPercent, upperPercent }: { lowerPercent: number | null; upperPercent: number | null }): string {
  if (lowerPercent === null && upperPercent === null) return '';
  if (lowerPercent === null) return ` (at most ${formatMoisture(upperPercent ?? 0)})`;
  if (upperPercent === null) return ` (at least ${formatMoisture(lowerPercent)})`;
  return ` (likely ${lowerPercent.toFixed(1)} to ${formatMoisture(upperPercent)})`;
}
