import { readFileSync } from 'node:fs';
import { expect } from 'vitest';

/** Reads one part of tests/golden/<name>.json, a list of rows. An empty part fails: it would check nothing. */
export function goldenRows<Row>(name: string, part: string): Row[] {
  const url = new URL(`../golden/${name}.json`, import.meta.url);
  const rows = JSON.parse(readFileSync(url, 'utf8'))[part] as Row[] | undefined;
  if (!rows || rows.length === 0) throw new Error(`tests/golden/${name}.json has no rows under ${part}`);
  return rows;
}

/** Expects a relative error of at most `tolerance`; two exact zeros agree. The message gives inputs, both values and the error. */
export function expectClose(actual: number, expected: number, tolerance: number, inputs: unknown): void {
  const error = actual === expected ? 0 : Math.abs(actual - expected) / Math.abs(expected);
  expect(
    error <= tolerance,
    `${JSON.stringify(inputs)}: got ${actual}, expected ${expected}, relative error ${error} > ${tolerance}`,
  ).toBe(true);
}
