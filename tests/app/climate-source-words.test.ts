import { expect, it } from 'vitest';
import { climateSourceWords } from '@/app/_format/climate-source-words';

it('never calls a target measured, nor a stopped logger current', () => {
  const logged = { kind: 'logged', inStore: null, lastOn: '2026-11-03', stopped: false } as const;
  expect(climateSourceWords(logged)).toBe('logged until 3 Nov 2026');
  expect(climateSourceWords({ ...logged, inStore: 'Freezer A' })).toBe('logged in Freezer A until 3 Nov 2026');
  expect(climateSourceWords({ ...logged, stopped: true })).toBe('logged until 3 Nov 2026, target since');
  expect(climateSourceWords({ kind: 'target', ofStore: null })).toBe('target, not logged');
  expect(climateSourceWords({ kind: 'target', ofStore: 'Freezer A' })).toBe('target as Freezer A, not logged');
});
