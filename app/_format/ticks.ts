/**
 * Round figures along an axis: 1, 2 or 5 times a power of ten, covering the range.
 *
 * @param from, to  ends of the data, from <= to
 * @param about     how many gaps are wanted, at most
 * @param whole     only whole numbers, for days of a calendar
 * @returns ascending, at least two; the first at or below `from`, the last at or above `to`
 * Checked in tests/app/ticks.test.ts
 */
export function tickValues(from: number, to: number, about: number, whole = false): number[] {
  const span = to - from || 1;
  const finest = 10 ** Math.floor(Math.log10(span / about));
  const power = whole ? Math.max(1, finest) : finest;
  const step = [1, 2, 5, 10].map((times) => times * power).find((size) => span / size <= about) ?? 10 * power;
  const first = Math.floor(from / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(to / step - 1e-9));
  // Rounded, since 3 x 0.1 is 0.30000000000000004.
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)));
}

/**
 * The round figures of an axis that lie on it.
 *
 * @param from, to  ends of the axis, from < to
 * @param about     how many gaps are wanted, at most
 * @param whole     only whole numbers, for days of a calendar
 * @returns ascending, from `from` to `to` at most
 * Checked in tests/app/ticks.test.ts
 */
export function roundTicks(from: number, to: number, about = 5, whole = false): number[] {
  const slack = (to - from) * 1e-9;
  return tickValues(from, to, about, whole).filter((tick) => tick >= from - slack && tick <= to + slack);
}
