/** Round figures for an axis: 1, 2 or 5 times a power of ten apart, about as many as wanted, from the first that is inside. */
export function roundTicks(from: number, to: number, about = 5): number[] {
  const rough = (to - from) / about;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((factor) => factor * power).find((candidate) => candidate >= rough) ?? rough;
  const ticks: number[] = [];
  for (let tick = Math.ceil(from / step) * step; tick <= to + step * 1e-9; tick += step)
    ticks.push(Number(tick.toPrecision(12)));
  return ticks;
}
