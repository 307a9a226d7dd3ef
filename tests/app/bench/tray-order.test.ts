import { expect, test } from 'vitest';
import { nextTrayNumber, traysLike, traysToday } from '@/app/bench/_parts/tray-order';
import { trayInView } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';
const later = { next: { on: '2026-11-28', final: false, daysLate: 0 } };
const done = { ...later, countedToday: true };
const late = { next: { on: '2026-11-23', final: false, daysLate: 2 } };

test('what is late, due or counted today is in the round, in the order in which it stands', () => {
  const trays = [trayInView('T-1', later), trayInView('T-2', done), trayInView('T-3', late), trayInView('T-4')];
  const { today, later: after } = traysToday(trays, TODAY);
  expect(today.map(({ tray }) => tray.number)).toEqual(['T-2', 'T-3', 'T-4']);
  expect(after.map(({ tray }) => tray.number)).toEqual(['T-1']);
});

test('the next tray is the next in the round that is not counted, and after the last the first again', () => {
  const trays = [trayInView('T-1'), trayInView('T-2', done), trayInView('T-3', later), trayInView('T-4', late)];
  expect(nextTrayNumber(trays, 'T-1', TODAY)).toBe('T-4');
  expect(nextTrayNumber(trays, 'T-4', TODAY)).toBe('T-1');
});

test('when the round is done there is no next tray, and a tray is not its own next', () => {
  expect(nextTrayNumber([trayInView('T-1'), trayInView('T-2', done)], 'T-1', TODAY)).toBeNull();
});

test('a tray that is gone from the list leads to the first that is open', () => {
  expect(nextTrayNumber([trayInView('T-1', done), trayInView('T-2')], 'T-9', TODAY)).toBe('T-2');
});

test('a few digits find a tray; letters find variety, crop and place', () => {
  const trays = [trayInView('T-0204', {}, { place: 'Incubator 1' }), trayInView('T-0311', {}, { cropName: 'kale' })];
  const numbers = (typed: string) => traysLike(trays, typed).map(({ tray }) => tray.number);
  expect(numbers('204')).toEqual(['T-0204']);
  expect(numbers(' t-03 ')).toEqual(['T-0311']);
  expect(numbers('KALE')).toEqual(['T-0311']);
  expect(numbers('incubator')).toEqual(['T-0204']);
  expect(numbers('oat')).toEqual([]);
});
