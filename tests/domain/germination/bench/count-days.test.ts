import { describe, expect, it } from 'vitest';
import { countDays, nextCount } from '@/lib/domain/germination/bench/count-days';

const schedule = { firstCountOn: '2026-11-04', finalCountOn: '2026-11-10', countEveryDays: 2 };

describe('days of counting', () => {
  it('run from the first by the step to the final one', () => {
    expect(countDays(schedule)).toEqual(['2026-11-04', '2026-11-06', '2026-11-08', '2026-11-10']);
    expect(countDays({ ...schedule, countEveryDays: 4 })).toEqual(['2026-11-04', '2026-11-08', '2026-11-10']);
  });

  it('are the first and the final without a step, and one day when they are the same', () => {
    expect(countDays({ ...schedule, countEveryDays: null })).toEqual(['2026-11-04', '2026-11-10']);
    const alone = { firstCountOn: '2026-11-10', finalCountOn: '2026-11-10' };
    expect(countDays({ ...alone, countEveryDays: null })).toEqual(['2026-11-10']);
    expect(countDays({ ...alone, countEveryDays: 1 })).toEqual(['2026-11-10']);
  });

  it('refuses a final day before the first, and half a step', () => {
    expect(() => countDays({ ...schedule, finalCountOn: '2026-11-03' })).toThrow(RangeError);
    for (const countEveryDays of [0, 1.5, Number.NaN]) {
      expect(() => countDays({ ...schedule, countEveryDays })).toThrow(RangeError);
    }
  });
});

describe('the count a tray waits for', () => {
  it('is the first, before its day and on it', () => {
    expect(nextCount(schedule, null, '2026-11-01')).toEqual({ on: '2026-11-04', final: false, daysLate: 0 });
    expect(nextCount(schedule, null, '2026-11-04')).toEqual({ on: '2026-11-04', final: false, daysLate: 0 });
  });

  it('one count makes up for several missed days, as late as the first of them', () => {
    expect(nextCount(schedule, '2026-11-04', '2026-11-09')).toEqual({ on: '2026-11-08', final: false, daysLate: 3 });
  });

  it('moves on when it was made, also in between', () => {
    expect(nextCount(schedule, '2026-11-06', '2026-11-06').on).toBe('2026-11-08');
    expect(nextCount(schedule, '2026-11-07', '2026-11-07').on).toBe('2026-11-08');
  });

  it('stays the final one until the tray is closed', () => {
    expect(nextCount(schedule, '2026-11-08', '2026-11-10')).toEqual({ on: '2026-11-10', final: true, daysLate: 0 });
    expect(nextCount(schedule, '2026-11-10', '2026-11-13')).toEqual({ on: '2026-11-10', final: true, daysLate: 3 });
  });
});
