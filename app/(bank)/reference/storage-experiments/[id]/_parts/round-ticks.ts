const MOST_TICKS = 5;

/**
 * Round figures from 0 to the end of an axis, at most five steps.
 *
 * Checked in tests/app/round-ticks.test.ts
 */
export function roundTicks(end: number): number[] {
  const rough = end / MOST_TICKS;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step =
    [1, 2, 5, 10].map((times) => times * power).find((candidate) => candidate >= rough * (1 - 1e-9)) ?? rough;
  const ticks: number[] = [];
  for (let i = 0; i * step <= end * (1 + 1e-9); i++) ticks.push(Number((i * step).toPrecision(12)));
  return ticks;
}

/**
 * Powers of ten, with 2 and 5 between them, that lie between two figures above 0; only the powers where there are many.
 *
 * Checked in tests/app/round-ticks.test.ts
 */
export function logTicks(from: number, to: number): number[] {
  const ticks: number[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power++) {
    for (const times of [1, 2, 5]) ticks.push(Number((times * 10 ** power).toPrecision(12)));
  }
  const inside = ticks.filter((tick) => tick >= from && tick <= to);
  const powers = inside.filter((tick) => Number.isInteger(Math.round(Math.log10(tick) * 1e9) / 1e9));
  return powers.length > MOST_TICKS - 2 ? powers : inside;
}
