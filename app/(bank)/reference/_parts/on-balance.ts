/** Grams as a balance of this step would show them: 470.4301 at 0.1 -> '470.4 g'. */
export function formatOnBalance(grams: number, stepG: number): string {
  const decimals = Math.min(5, Math.max(0, Math.ceil(-Math.log10(stepG) - 1e-9)));
  return `${grams.toFixed(decimals)} g`;
}

/** The same, up to the next step: weighed out, a step less would be too little. 1.2341 at 0.01 -> '1.24 g'. */
export function formatUpOnBalance(grams: number, stepG: number): string {
  return formatOnBalance(Math.ceil(grams / stepG - 1e-9) * stepG, stepG);
}
