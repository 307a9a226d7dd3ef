/** Four significant figures, never in powers of ten: 2.132625 -> '2.133', 0.0000184569 -> '0.00001846'. */
export function figures(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.min(12, Math.max(0, 3 - Math.floor(Math.log10(Math.abs(value)))));
  return value.toFixed(decimals);
}

/** Seeds in a gram, as whole as the figure allows: '469 seeds', '1.9 seeds'. */
export function seedsPerGram(thousandSeedWeightG: number): string {
  const seeds = 1000 / thousandSeedWeightG;
  return `${seeds < 10 ? Number(seeds.toFixed(1)) : Math.round(seeds)} seeds`;
}
