import { describe, expect, it } from 'vitest';
import { countAgenda } from '@/lib/domain/germination/bench/count-agenda';
import { countsAhead } from '@/lib/domain/germination/bench/counts-ahead';

const TODAY = '2026-11-25';
const STRETCH = { from: TODAY, until: '2026-12-20' };

function tray(
  number: string,
  firstCountOn: string,
  finalCountOn: string,
  where: [string | null, string | null] = ['20', null],
) {
  const [temperatures, place] = where;
  const ahead = countsAhead({ firstCountOn, finalCountOn, countEveryDays: null }, null, TODAY);
  return { number, temperatures, place, ahead, toClose: false };
}

const told = (trays: ReturnType<typeof tray>[], stretch = STRETCH) => {
  const { late, days } = countAgenda(trays, stretch);
  const numbers = (groups: typeof late) =>
    groups.map(({ temperatures, place, entries }) => [
      temperatures,
      place,
      entries.map((entry) => entry.tray.number).join(' '),
    ]);
  return { late: numbers(late), days: days.map(({ on, groups }) => [on, numbers(groups)]) };
};

describe('the agenda of counts', () => {
  it('has each planned count on its day, days in order, and only those of the stretch', () => {
    expect(told([tray('T-2', '2026-11-27', '2026-12-22'), tray('T-1', TODAY, '2026-12-20')])).toEqual({
      late: [],
      days: [
        [TODAY, [['20', null, 'T-1']]],
        ['2026-11-27', [['20', null, 'T-2']]],
        ['2026-12-20', [['20', null, 'T-1']]],
      ],
    });
  });

  it('tells what is late apart, also where the stretch lies ahead', () => {
    const late = tray('T-1', '2026-11-24', '2026-12-08');
    expect(told([late]).late).toEqual([['20', null, 'T-1']]);
    expect(told([late], { from: '2026-12-21', until: '2027-01-17' })).toEqual({
      late: [['20', null, 'T-1']],
      days: [],
    });
  });

  it('puts together what stands together: by temperature, then place, then number', () => {
    const trays = [
      tray('T-5', TODAY, '2026-12-02', [null, null]),
      tray('T-4', TODAY, '2026-12-02', ['20-30', 'incubator 2']),
      tray('T-3', TODAY, '2026-12-02', ['20', null]),
      tray('T-2', TODAY, '2026-12-02', ['20', 'shelf 1']),
      tray('T-1', TODAY, '2026-12-02', ['20-30', 'incubator 2']),
    ];
    expect(told(trays).days[0]?.[1]).toEqual([
      ['20', 'shelf 1', 'T-2'],
      ['20', null, 'T-3'],
      ['20-30', 'incubator 2', 'T-1 T-4'],
      [null, null, 'T-5'],
    ]);
  });

  it('leaves out a tray that waits to be closed', () => {
    expect(told([{ ...tray('T-1', TODAY, '2026-12-02'), toClose: true }])).toEqual({ late: [], days: [] });
  });
});
