import { boundsOutwards, inHundred, LEVEL_IN_WORDS } from '@/app/(bank)/germination/_parts/result-words';
import type { CombinedResult, CombinedTests, LeftOutTest } from '@/lib/domain/germination/combined-tests';

/**
 * What the lot's tests say together; what stands between ** is bold.
 *
 * @param combined  from `combineTests`
 * @returns a sentence, or null when no two tests can be taken for one
 * Checked in tests/app/combined-words.test.ts
 */
export function combinedInWords(combined: CombinedResult): string | null {
  if (!combined.ok) return null;
  const { taken, germinated, seeds, unevenInterval } = combined;
  const uneven = unevenInterval?.ok ? unevenInterval : null;
  const { lower, upper } = boundsOutwards({ interval: uneven ?? combined.interval });
  const allowing = uneven ? ', allowing for uneven dishes' : '';
  return (
    `**${inHundred(germinated, seeds)} seeds germinated** in ${joined(taken)} together (${seeds} seeds); ` +
    `${LEVEL_IN_WORDS} the truth lies between ${lower} and ${upper}${allowing}. ${asIf(combined)}`
  );
}

function asIf({ daysApart }: CombinedTests): string {
  const apart = daysApart === 0 ? 'set on one day' : `set ${span(daysApart)} apart`;
  return `They were ${apart}, and are taken as if the lot had not aged in that time.`;
}

function span(days: number): string {
  if (days < 100) return days === 1 ? '1 day' : `${days} days`;
  if (days < 730) return `${Math.round(days / 30.4)} months`;
  return `${Math.round(days / 365.25)} years`;
}

const WHY: Record<LeftOutTest['reason'], string> = {
  'replicates-disagree': 'its replicates do not agree',
  'aged-between': 'the lot has aged since',
  differs: 'it differs from the newer ones by more than chance',
};

/**
 * The tests left out of the combined figure, and why.
 *
 * @returns a sentence, or null when none was, or when nothing but age kept tests apart and there is no figure
 * Checked in tests/app/combined-words.test.ts
 */
export function leftOutInWords(combined: CombinedResult): string | null {
  const { leftOut } = combined;
  if (leftOut.length === 0) return null;
  if (!combined.ok && leftOut.every(({ reason }) => reason === 'aged-between')) return null;
  const each = leftOut.map(({ name, reason }) => `${name} (${WHY[reason]})`);
  return combined.ok
    ? `Left out: ${each.join(', ')}.`
    : `No two of its tests can be taken together. Left out: ${each.join(', ')}.`;
}

function joined(names: readonly string[]): string {
  if (names.length < 2) return names.join('');
  return `${names.slice(0, -1).join(', ')} and ${names.at(-1)}`;
}
