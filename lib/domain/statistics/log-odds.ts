/**
 * Log odds of a proportion: log p / (1 - p).
 *
 * @param proportion  in [0, 1]; -Infinity at 0, Infinity at 1
 * @returns any real number; with the proportion's own digits near 0, those of its complement near 1
 * Checked in tests/domain/statistics/log-odds.test.ts
 */
export function logOdds(proportion: number): number {
  return Math.log(proportion) - Math.log1p(-proportion);
}

/**
 * The proportion with these log odds. Its complement is that of the negative, which keeps its digits where the proportion
 * is close to 1.
 *
 * @param odds  log odds, any real number or +-Infinity
 * @returns in [0, 1]
 * Checked in tests/domain/statistics/log-odds.test.ts
 */
export function inverseLogOdds(odds: number): number {
  return 1 / (1 + Math.exp(-odds));
}
