/**
 * Constants to start the fit of a storage experiment from: a weighted line through the conditions' own sigmas where they
 * suffice, and a few guesses across what published constants show, placed at the rate that the whole experiment shows.
 */
import { choleskyFactor, choleskySolve } from '../../statistics/cholesky';
import type { LongevityConstants } from '../viability-equation';
import type { ConditionFit, ConditionRefusal } from './condition-fits';
import type { StorageRow } from './storage-row';

/** Published CW lie between 3 and 7. */
const GUESSED_CW = [2, 4.5, 7];
/** Probits lost at the middle of the storage times: experiments are planned to see seed die. */
const GUESSED_LOSS = 1;

/**
 * @param rows        counts with seed
 * @param conditions  each condition's own fit
 * @param fitsWarmth  whether CH and CQ are fitted
 * @param held        CH and CQ otherwise, and for the guesses
 * @returns at least one set of constants
 * Checked through fitStorageExperiment, whose answers do not hang on the start
 */
export function startingConstants(
  rows: readonly StorageRow[],
  conditions: readonly (ConditionFit | ConditionRefusal)[],
  fitsWarmth: boolean,
  held: { CH: number; CQ: number },
): LongevityConstants[] {
  const { CH, CQ } = held;
  const warmth = (t: number) => CH * t + CQ * t * t;
  const stored = rows.filter((row) => row.days > 0);
  const guesses = GUESSED_CW.map((CW) => {
    const levels = stored
      .map(
        (row) =>
          Math.log10(row.days / GUESSED_LOSS) +
          CW * Math.log10(row.moisturePercent as number) +
          warmth(row.temperatureC as number),
      )
      .sort((a, b) => a - b);
    return { KE: levels[Math.floor(levels.length / 2)] as number, CW, CH, CQ };
  });
  const line = weightedLine(
    conditions.filter((one) => one.ok),
    fitsWarmth,
    held,
  );
  return line ? [line, ...guesses] : guesses;
}

function weightedLine(
  fits: readonly ConditionFit[],
  fitsWarmth: boolean,
  held: { CH: number; CQ: number },
): LongevityConstants | null {
  const size = fitsWarmth ? 4 : 2;
  const normal = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const right = new Array<number>(size).fill(0);
  for (const { moisturePercent, temperatureC: t, log10Sigma, standardErrorLog10 } of fits) {
    const columns = [1, -Math.log10(moisturePercent), ...(fitsWarmth ? [-t, -t * t] : [])];
    const level = fitsWarmth ? log10Sigma : log10Sigma + held.CH * t + held.CQ * t * t;
    // A tenth of a decade stands for what the equation itself may miss, so that no condition decides alone.
    const weight = 1 / (standardErrorLog10 * standardErrorLog10 + 0.01);
    for (const [i, value] of columns.entries()) {
      right[i] = (right[i] as number) + weight * value * level;
      for (const [j, other] of columns.entries()) {
        (normal[i] as number[])[j] = (normal[i]?.[j] as number) + weight * value * other;
      }
    }
  }
  const factor = fits.length >= size ? choleskyFactor(normal) : null;
  if (!factor) return null;
  const [KE, CW, CH, CQ] = choleskySolve(factor, right) as [number, number, ...(number | undefined)[]];
  return { KE, CW, CH: CH ?? held.CH, CQ: CQ ?? held.CQ };
}
