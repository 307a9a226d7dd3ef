import { formatCount, formatDate, formatPercentFigure } from '@/app/_format/figures';
import { boundsOutwards } from '@/app/(bank)/germination/_parts/result-words';
import type { BesideForecast } from '@/lib/domain/germination/dormancy/beside-forecast';
import type { ViabilityClass, ViabilityKind } from '@/lib/domain/germination/dormancy/viability-kinds';
import type { ViabilityTestResult } from '@/lib/domain/germination/dormancy/viability-test';

/** What the form asks for each class. */
export const CLASS_QUESTIONS: Record<ViabilityClass, { label: string; hint?: string }> = {
  stainedNormally: {
    label: 'Stained as it should be',
    hint: 'All parts that make a seedling are evenly red.',
  },
  stainedAbnormally: {
    label: 'Stained in part, or wrongly',
    hint: 'Parts that matter are white, dark or blotched.',
  },
  unstained: { label: 'Unstained', hint: 'White throughout: dead.' },
  firm: { label: 'Full and firm', hint: 'Of a healthy colour inside.' },
  empty: { label: 'Empty', hint: 'A coat with nothing in it.' },
  insectDamaged: { label: 'Eaten by insects' },
  dead: { label: 'Soft, discoloured or rotten' },
};

/** What to write about how it was done, and what is usual. No figures of single crops: those must be looked up. */
export const METHOD_HINT: Record<ViabilityKind, { asked: string; usual: string }> = {
  tetrazolium: {
    asked: 'Soaked how long, how opened, strength, hours, temperature.',
    usual:
      'Seed takes up water first: soaked, or overnight between moist paper where soaking would hurt it. The coat is opened, or the seed cut lengthwise, so that the solution reaches the germ. It lies in a solution of 0.1 to 1 % at about 30 °C, in the dark, until living tissue is red: hours to a day. A few seeds killed by boiling water, stained beside it, show what dead looks like.',
  },
  cut: {
    asked: 'Dry or soaked, how it was cut.',
    usual:
      'Seed is soaked until it can be cut, and halved lengthwise with a sharp blade. Firm white tissue counts as full; the finding is the most that can be alive.',
  },
};

/**
 * What a viability test found, for the top of its page; what stands between ** is bold.
 *
 * @param result     of the seeds examined
 * @param trayNumber the germination test they were left over in: they are no fair sample of the lot then
 * Checked in tests/app/viability-words.test.ts
 */
export function foundInWords(result: ViabilityTestResult, trayNumber: string | null): string {
  const { seeds, alive, shows } = result;
  const verb =
    shows === 'alive' ? 'stained as living seed does' : seeds === 1 ? 'was full and firm' : 'were full and firm';
  const what = `**${formatCount(alive)} of ${seeds === 1 ? 'one seed' : `${formatCount(seeds)} seeds`} ${verb}**`;
  if (trayNumber) return `${what}, of those left over in ${trayNumber}.`;
  const { lower, upper } = boundsOutwards(result.estimate);
  return shows === 'alive'
    ? `${what}: between ${lower} and ${upper} % of the lot is likely alive.`
    : `${what}: likely between ${lower} and ${upper} % of the lot, and **no more than that is alive**.`;
}

/**
 * The finding beside the lot's forecast of today.
 *
 * Checked in tests/app/viability-words.test.ts
 */
export function besideForecastInWords(
  verdict: BesideForecast,
  forecast: { median: number; lower: number; upper: number },
): string {
  const band = `The lot's forecast for today is ${formatPercentFigure(forecast.median)} % alive (${formatPercentFigure(forecast.lower)} to ${formatPercentFigure(forecast.upper)})`;
  return {
    agrees: `${band}: this test agrees with it.`,
    allows: `${band}: this test allows that. It cannot confirm it, since firm seed may be dead.`,
    below: `${band}: this test finds less, by more than chance explains.`,
    above: `${band}: this test finds more, by more than chance explains.`,
  }[verdict];
}

/** Why the forecast is as it was before (decision 028). */
export const FORECAST_STANDS =
  'The forecast is not changed by it: only germination tests enter it, because regrowing needs seedlings. Stained seed may be dormant or grow abnormally, reading a stain is a judgement that no interval knows of, and seed left over in a dish is no fair sample of the lot.';

/** The same in one line, for lists: '90 % alive', 'at most 76 % alive'. */
export function resultInShort({ estimate, shows }: ViabilityTestResult): string {
  const percent = `${formatPercentFigure(estimate.proportion)} %`;
  return shows === 'alive' ? `${percent} alive` : `at most ${percent} alive`;
}

/** What the ledger says of a test's seed. */
export function seedInWords(test: {
  takenOut: { on: string; seeds: number } | null;
  packet: { number: string } | null;
  tray: { number: string } | null;
}): string {
  if (test.tray) return `Left over in ${test.tray.number}: it went out of the ledger with that test.`;
  if (test.takenOut)
    return `${formatCount(test.takenOut.seeds)} taken out of the ledger on ${formatDate(test.takenOut.on)}.`;
  return test.packet ? 'Not taken out of the ledger.' : 'From no packet of this bank.';
}
