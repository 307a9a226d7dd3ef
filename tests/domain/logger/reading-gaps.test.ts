import { describe, expect, it } from 'vitest';
import { readingGaps } from '@/lib/domain/logger/reading-gaps';

describe('gaps between readings', () => {
  it('are steps of more than three usual ones', () => {
    // Hourly, then three hours (kept), then five (a gap).
    const hours = [0, 1, 2, 3, 6, 7, 8, 13, 14];
    const gaps = readingGaps(Float64Array.from(hours, (hour) => hour * 3600));
    expect(gaps).toEqual({
      usualIntervalSeconds: 3600,
      count: 1,
      totalSeconds: 5 * 3600,
      longest: [{ from: 8 * 3600, to: 13 * 3600 }],
    });
  });
  it('keeps the twenty longest, in the order of time', () => {
    const at: number[] = [];
    let time = 0;
    for (let day = 0; day < 30; day += 1) {
      for (let reading = 0; reading < 24; reading += 1) {
        time += 60;
        at.push(time);
      }
      time += 600 + day * 60;
    }
    const { count, longest } = readingGaps(Float64Array.from(at));
    expect(count).toBe(29);
    expect(longest).toHaveLength(20);
    expect(longest.every(({ from }, index) => index === 0 || from > (longest[index - 1]?.from ?? 0))).toBe(true);
    expect(Math.min(...longest.map(({ from, to }) => to - from))).toBe(600 + 9 * 60 + 60);
  });
  it('has no usual step with fewer than two readings', () => {
    expect(readingGaps(Float64Array.of(5)).usualIntervalSeconds).toBeNull();
    expect(readingGaps(new Float64Array(0)).count).toBe(0);
  });
});
