import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { countDays, nextCount } from '@/lib/domain/germination/bench/count-days';
import { countsAhead } from '@/lib/domain/germination/bench/counts-ahead';

const EVERY_TWO = { firstCountOn: '2026-11-20', finalCountOn: '2026-11-26', countEveryDays: 2 };

describe('counts still to be made', () => {
  it('are all planned days before anything was counted or missed', () => {
    const ahead = countsAhead(EVERY_TWO, null, '2026-11-19');
    expect(ahead.map(({ on }) => on)).toEqual(countDays(EVERY_TWO));
    expect(ahead.map(({ final }) => final)).toEqual([false, false, false, true]);
  });

  it('leave out what was counted, and of missed days all but the last', () => {
    expect(countsAhead(EVERY_TWO, '2026-11-21', '2026-11-21').map(({ on }) => on)).toEqual([
      '2026-11-22',
      '2026-11-24',
      '2026-11-26',
    ]);
    const missed = countsAhead(EVERY_TWO, null, '2026-11-23');
    expect(missed.map(({ on, daysLate }) => [on, daysLate])).toEqual([
      ['2026-11-22', 3],
      ['2026-11-24', 0],
      ['2026-11-26', 0],
    ]);
  });

  it('are the final one, and late, after the final count until the tray is closed', () => {
    expect(countsAhead(EVERY_TWO, '2026-11-26', '2026-11-28')).toEqual([
      { on: '2026-11-26', final: true, daysLate: 2 },
    ]);
  });

  it('begin with the next count, are planned days in order, and end with the final one', () => {
    const day = fc.integer({ min: 0, max: 40 }).map((days) => addDays('2026-11-01', days));
    const schedule = fc
      .record({
        firstCountOn: day,
        span: fc.integer({ min: 0, max: 30 }),
        step: fc.option(fc.integer({ min: 1, max: 9 })),
      })
      .map(({ firstCountOn, span, step }) => ({
        firstCountOn,
        finalCountOn: addDays(firstCountOn, span),
        countEveryDays: step,
      }));
    fc.assert(
      fc.property(schedule, fc.option(day), day, (planned, last, today) => {
        const ahead = countsAhead(planned, last, today);
        expect(ahead[0]).toEqual(nextCount(planned, last, today));
        const days = ahead.map(({ on }) => on);
        expect(days).toEqual([...new Set(days)].sort());
        for (const on of days) expect(countDays(planned)).toContain(on);
        expect(ahead.at(-1)).toMatchObject({ on: planned.finalCountOn, final: true });
      }),
    );
  });
});
