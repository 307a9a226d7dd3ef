import { expect, test } from 'vitest';
import { toKeptUnit } from '../../../lib/domain/spreadsheet/unit-suffix';

test('weights are brought to grams', () => {
  expect(toKeptUnit(12, null, 'grams')).toEqual({ ok: true, value: 12 });
  expect(toKeptUnit(12, 'g', 'grams')).toEqual({ ok: true, value: 12 });
  expect(toKeptUnit(12, 'Gr.', 'grams')).toEqual({ ok: true, value: 12 });
  expect(toKeptUnit(1.5, 'kg', 'grams')).toEqual({ ok: true, value: 1500 });
  expect(toKeptUnit(250, 'mg', 'grams')).toEqual({ ok: true, value: 0.25 });
  // International avoirdupois ounce, exact by definition.
  expect(toKeptUnit(2, 'oz', 'grams')).toEqual({ ok: true, value: 56.69904625 });
});

test('a unit that does not belong to the column is refused, not dropped', () => {
  expect(toKeptUnit(12, '%', 'grams')).toEqual({ ok: false, reason: 'unknown-unit' });
  expect(toKeptUnit(12, 'g', 'percent')).toEqual({ ok: false, reason: 'unknown-unit' });
  expect(toKeptUnit(12, 'g', 'seeds')).toEqual({ ok: false, reason: 'unknown-unit' });
  expect(toKeptUnit(12, 'constructor', 'grams')).toEqual({ ok: false, reason: 'unknown-unit' });
  expect(toKeptUnit(12, 'seeds', 'seeds')).toEqual({ ok: true, value: 12 });
});
