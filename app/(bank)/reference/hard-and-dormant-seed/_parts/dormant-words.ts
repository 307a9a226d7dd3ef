import type { DormantShare } from '@/lib/domain/germination/dormancy/dormant-share';

/**
 * What the difference between viability and germination says.
 *
 * @param dormant  from `dormantShare`
 * @param way      how the seed was shown alive: stained, or grown after a treatment
 * @returns a sentence or two, percentage points rounded outwards
 * Checked in tests/app/dormant-words.test.ts
 */
export function dormantInWords({ interval, verdict }: DormantShare, way: 'stained' | 'treated'): string {
  const points = Math.round(Math.abs(interval.difference) * 1000) / 10;
  const lower = Math.floor(Math.abs(interval.lower) * 100);
  const upper = Math.ceil(Math.abs(interval.upper) * 100);
  const limits = `likely ${sign(interval.lower)}${interval.lower < 0 ? Math.ceil(-interval.lower * 100) : lower} to ${sign(interval.upper)}${interval.upper < 0 ? Math.floor(-interval.upper * 100) : upper} points`;
  switch (verdict) {
    case 'shown':
      return (
        `${points} points more are alive than germinate (${limits}): ` +
        (way === 'stained'
          ? 'that much of the lot is dormant, hard, or would give abnormal seedlings.'
          : 'that much of the lot was held back, and the treatment released it.')
      );
    case 'not-shown':
      return `The two differ by ${points} points (${limits}): too little to show dormant seed, too unsure to deny it.`;
    case 'contradiction':
      return way === 'stained'
        ? `${points} points fewer were found alive than germinate (${limits}). That cannot be: look at the staining again.`
        : `${points} points fewer grew after the treatment (${limits}): it harmed the seed, or one of the two tests is wrong.`;
  }
}

const sign = (value: number): string => (value < 0 ? '−' : '');
