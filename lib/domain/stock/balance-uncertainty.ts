/**
 * How many seeds a packet holds, and how far that may be off.
 *
 * The balance is the sum of the ledger. Each line may be off by its own spread; a stock-take's count says afresh what is
 * there, so only the count and what came after it matter. Amounts weighed with the same thousand-seed weight T are off
 * the same way: if T is 5 % too small, what went in and what came out are both 5 % too many. Their errors are therefore
 * added before they are squared, in against out, and only the errors of the single weighings as squares:
 *   variance = (sum of +-k)^2 for the lot's own T + the same for the crop's usual T + sum of r^2
 * with k the part of a line's spread that comes from T, and r the rest of it.
 */
import { normalQuantile } from '../statistics/normal-distribution';
import { requireProportion } from '../statistics/require-proportion';
import {
  OWN_SEED_WEIGHT_ERROR,
  SINGLE_SEED_VARIATION,
  seedWeightPart,
  spreadOfAmount,
  USUAL_SEED_WEIGHT_ERROR,
} from './spread-of-amount';

/** One line of a packet's ledger. */
export interface SpreadLine {
  id: string;
  reason: string;
  /** whole seeds, signed */
  seeds: number;
  /** signed; null when it was not weighed */
  grams: number | null;
  /** standard deviation of `seeds`; null for lines from before it was kept */
  seedsSd: number | null;
  /** the line that this one takes back */
  correctsId: string | null;
}

export interface UncertainBalance {
  seeds: number;
  /** standard deviation, seeds */
  sd: number;
  /** band, whole seeds, rounded outward, never below 0 */
  lower: number;
  upper: number;
  level: number;
  /** some lines are from before spreads were kept: theirs was assumed */
  assumed: boolean;
}

export const BALANCE_LEVEL = 0.9;

/** A thousand-seed weight that is off by more than this was not measured on the lot: between 3 % and 25 %. */
const OWN_OR_USUAL = Math.sqrt(OWN_SEED_WEIGHT_ERROR * USUAL_SEED_WEIGHT_ERROR);

/** 300.0000000001 seeds are 300: arithmetic, not another seed. */
const ROUNDING_SLACK = 1e-6;

/**
 * What a packet holds, with a band.
 *
 * @param lines            the packet's whole ledger, in the order in which it was written
 * @param lotHasSeedWeight whether the lot has a thousand-seed weight of its own: decides how lines are read that were
 *                         weighed before spreads were kept. Such lines count as exact where only seeds were written
 * @param level            of the band, in (0, 1); 0.9 by default
 * @returns the balance, 0 for an empty ledger. A packet that came to exactly 0 was emptied: nothing is unsure then
 * @throws RangeError when the level is outside its range or a spread is negative
 * @see law of propagation of uncertainty with correlated inputs: JCGM 100:2008 (GUM), 5.2
 * Checked against R by whole covariance matrices, and by simulated packets: tests/golden/balance-uncertainty.json
 */
export function balanceUncertainty(
  lines: readonly SpreadLine[],
  options: { lotHasSeedWeight: boolean; level?: number },
): UncertainBalance {
  return lotUncertainty([lines], options);
}

/**
 * What a lot holds in all its packets, with a band: its thousand-seed weight makes all of them off the same way. Seed
 * that was weighed from one packet into another counts as unsure in both, which leaves the band a little wide.
 *
 * @param ledgers  of its packets, each as balanceUncertainty takes it
 * @returns, throws  as balanceUncertainty
 * Checked in tests/domain/stock/balance-uncertainty.test.ts
 */
export function lotUncertainty(
  ledgers: readonly (readonly SpreadLine[])[],
  { lotHasSeedWeight, level = BALANCE_LEVEL }: { lotHasSeedWeight: boolean; level?: number },
): UncertainBalance {
  requireProportion('balanceUncertainty', 'level', level, true);
  const spreads = ledgers.map((lines) => spreadOf(lines, lotHasSeedWeight));
  const sumOf = (part: 'ownPart' | 'usualPart' | 'variance') => spreads.reduce((sum, spread) => sum + spread[part], 0);
  const seeds = ledgers.flat().reduce((sum, line) => sum + line.seeds, 0);
  const sd = Math.sqrt(sumOf('ownPart') ** 2 + sumOf('usualPart') ** 2 + sumOf('variance'));
  const half = sd * normalQuantile((1 + level) / 2);
  return {
    seeds,
    sd,
    lower: Math.max(0, Math.floor(seeds - half + ROUNDING_SLACK)),
    upper: Math.max(0, Math.ceil(seeds + half - ROUNDING_SLACK)),
    level,
    assumed: spreads.some(({ assumed }) => assumed),
  };
}

interface Spread {
  /** signed sums of what thousand-seed weights contribute, seeds */
  ownPart: number;
  usualPart: number;
  /** of the single weighings, seeds squared */
  variance: number;
  assumed: boolean;
}

function spreadOf(lines: readonly SpreadLine[], lotHasSeedWeight: boolean): Spread {
  const present = new Set(lines.map((line) => line.id));
  const takenBack = new Set(lines.map((line) => line.correctsId));
  let written = 0;
  // Without what was taken back: seed that was put back is the seed that had been taken out, not another handful.
  let effective = 0;
  let spread = nothingUnsure();
  for (const line of lines) {
    written += line.seeds;
    if (takenBack.has(line.id) || (line.correctsId !== null && present.has(line.correctsId))) continue;
    effective += line.seeds;
    if (line.reason === 'count') spread = afterCount(written, sdOf(line, lotHasSeedWeight));
    else addLine(spread, line, lotHasSeedWeight);
    if (effective === 0) spread = nothingUnsure();
  }
  return spread;
}

const nothingUnsure = (): Spread => ({ ownPart: 0, usualPart: 0, variance: 0, assumed: false });

/** What a count leaves unsure. Weighed: the balance's step is not known any more and goes with the seed weight. */
function afterCount(total: number, sd: number): Spread {
  const spread = nothingUnsure();
  const alone = Math.min(sd ** 2, SINGLE_SEED_VARIATION ** 2 * Math.max(0, total));
  spread.variance = alone;
  addSeedWeightPart(spread, Math.sqrt(sd ** 2 - alone), total);
  return spread;
}

function addLine(spread: Spread, line: SpreadLine, lotHasSeedWeight: boolean): void {
  const sd = sdOf(line, lotHasSeedWeight);
  spread.assumed ||= line.seedsSd === null;
  // Seed that came over from another packet has a spread but no weight: all of it stands by itself.
  const part = line.grams === null ? 0 : seedWeightPart(line.seeds, line.grams, sd);
  spread.variance += sd ** 2 - part ** 2;
  addSeedWeightPart(spread, part, line.seeds);
}

function addSeedWeightPart(spread: Spread, part: number, seeds: number): void {
  if (part === 0 || seeds === 0) return;
  const key = part / Math.abs(seeds) < OWN_OR_USUAL ? 'ownPart' : 'usualPart';
  spread[key] += Math.sign(seeds) * part;
}

function sdOf(line: SpreadLine, lotHasSeedWeight: boolean): number {
  if (line.seedsSd !== null) {
    if (!(line.seedsSd >= 0)) throw new RangeError(`balanceUncertainty: seedsSd must be >= 0, got ${line.seedsSd}`);
    return line.seedsSd;
  }
  const seedWeightError = lotHasSeedWeight ? OWN_SEED_WEIGHT_ERROR : USUAL_SEED_WEIGHT_ERROR;
  return spreadOfAmount({ seeds: line.seeds, weighedG: line.grams, seedWeightError });
}
