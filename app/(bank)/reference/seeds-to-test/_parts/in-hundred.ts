/** An error rate as it stands in tables: one decimal, and more where it is small. */
export function inHundred(chance: number): string {
  const hundred = chance * 100;
  if (hundred === 0) return '0';
  if (hundred >= 0.05) return hundred.toFixed(1);
  return hundred < 0.005 ? '< 0.01' : hundred.toFixed(2);
}
