import { formatChance, formatDate, formatPercent, formatPercentFigure } from '@/app/_format/figures';
import type { Belief, WhatWasLearnt } from '@/lib/server/queries/what-was-learnt';

type Learnt = Extract<WhatWasLearnt, { ok: true }>;

/** How the two beliefs are named: an earlier test is compared with all others, so 'before' would be wrong. */
export function namesOf({ isNewest }: Pick<Learnt, 'isNewest'>): { before: string; now: string } {
  return isNewest ? { before: 'before this test', now: 'now' } : { before: 'without this test', now: 'with this test' };
}

/**
 * What a test has changed, in sentences; what stands between ** is bold.
 *
 * Checked in tests/app/learnt-words.test.ts
 */
export function learntInWords(learnt: Pick<Learnt, 'before' | 'now' | 'isNewest'>): string {
  const { before, now } = learnt;
  const names = namesOf(learnt);
  const line =
    formatPercentFigure(before.threshold) === formatPercentFigure(now.threshold)
      ? `its line of ${formatPercent(now.threshold)}`
      : `its line (${formatPercent(before.threshold)}, ${names.now} ${formatPercent(now.threshold)})`;
  const sentences = [
    chance(before) === chance(now)
      ? `The chance that the lot is below ${line} stays **${chance(now)}**.`
      : `The chance that the lot is below ${line} was ${chance(before)} ${names.before}; ${names.now} it is **${chance(now)}**.`,
    bandInWords(learnt),
    nextTestInWords(before.nextTestOn, now.nextTestOn),
    seasonInWords(before, now),
  ];
  return sentences.join(' ');
}

const chance = ({ chanceBelow }: Belief) => formatChance(chanceBelow);

function bandInWords({ before, now }: Pick<Learnt, 'before' | 'now'>): string {
  const width = ({ viability }: Belief) => viability.upper - viability.lower;
  const change = width(now) / width(before);
  // A band that hardly moved is told so: a test that taught nothing is a finding too.
  if (change > 0.95 && change < 1.05) return `How sure the forecast is hardly changed: ${rangeInWords(now)}.`;
  const verb = change < 1 ? 'narrowed' : 'widened';
  return `What the forecast leaves open ${verb} from ${rangeInWords(before)} to ${rangeInWords(now)}.`;
}

/** '78–91 %' */
export const rangeInWords = ({ viability: { lower, upper } }: Belief) =>
  `${formatPercentFigure(lower)}–${formatPercentFigure(upper)} %`;

function nextTestInWords(before: string | null, now: string | null): string {
  if (before === now)
    return now === null ? 'No further test is worth its seed.' : `The next test stays on ${formatDate(now)}.`;
  if (now === null) return 'No further test is worth its seed now.';
  if (before === null) return `A next test is set for **${formatDate(now)}**.`;
  return `The next test moves from ${formatDate(before)} to **${formatDate(now)}**.`;
}

function seasonInWords({ lastSafeSeason: before }: Belief, { lastSafeSeason: now }: Belief): string {
  if (before === now) return `The last safe season is the same: ${seasonFigure(now)}.`;
  return `The last safe season was ${seasonFigure(before)}; it is **${seasonFigure(now)}**.`;
}

/** '2031', or where there is no such year. */
export function seasonFigure(season: Belief['lastSafeSeason']): string {
  if (season === 'past' || season === null) return 'past already';
  return season === 'beyond horizon' ? 'generations away' : String(season);
}
