import { expect, test } from 'vitest';
import { whatsUndone } from '@/app/bench/_parts/whats-undone';
import { benchCount, dishWith, trayInView } from '@/tests/support/bench-dish';

const TODAY = '2026-11-25';

test('the tray and dish in which taking back changed something are named', () => {
  const same = trayInView('T-1');
  const before = trayInView('T-2', { dishes: [dishWith(50), dishWith(50, benchCount('a', TODAY, { normal: 3 }))] });
  const after = trayInView('T-2', { dishes: [dishWith(50), dishWith(50)] });
  expect(whatsUndone([same, before], [same, after])).toEqual({ trayNumber: 'T-2', dish: 1 });
});

test('where nothing changed there is nothing to show', () => {
  const same = trayInView('T-1');
  expect(whatsUndone([same], [same])).toBeNull();
});
