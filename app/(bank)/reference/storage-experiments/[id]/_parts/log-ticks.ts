/** From this many powers of ten on, figures between them would crowd. */
const MANY_POWERS = 3;

/**
 * Figures of a logarithmic axis: powers of ten, with 2 and 5 between them where there is room.
 *
 * @param from  lower end, above 0
 * @param to    upper end, above `from`
 * Checked in tests/app/log-ticks.test.ts
 */
export function logTicks(from: number, to: number): number[] {
  const ticks: number[] = [];
  const powers: number[] = [];
  for (let power = Math.floor(Math.log10(from)); power <= Math.ceil(Math.log10(to)); power++) {
    for (const times of [1, 2, 5]) {
      const tick = Number((times * 10 ** power).toPrecision(12));
      if (tick < from || tick > to) continue;
      ticks.push(tick);
      if (times === 1) powers.push(tick);
    }
  }
  return powers.length >= MANY_POWERS ? powers : ticks;
}
