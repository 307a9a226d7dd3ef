import { describe, expect, test } from 'vitest';
import { MOST_TRAYS_AT_ONCE, setTraysInput } from '@/lib/schemas/set-trays';

const schema = setTraysInput('2026-11-25');
const ROW = { lot: 'L-2020-001', seedFrom: 'packet:p1', size: '4x25', method: 'm1:0:0' };
const parse = (row: object, common: object = {}) =>
  schema.safeParse({ setOn: '2026-11-25', place: '', trays: [{ ...ROW, ...row }], ...common });
const tray = (row: object) => parse(row).data?.trays[0];
const messageAt = (outcome: ReturnType<typeof parse>, path: string) =>
  outcome.error?.issues.find((issue) => issue.path.join('.') === path)?.message;

test('reads a size as dishes, and where the seed comes from', () => {
  expect(tray({})).toMatchObject({
    dishes: [25, 25, 25, 25],
    plan: null,
    seedFrom: { kind: 'packet', id: 'p1' },
    prechillDays: 0,
    anyway: false,
  });
  expect(tray({ seedFrom: 'taken:m:7' })?.seedFrom).toEqual({ kind: 'taken', id: 'm:7' });
});

test('numbers written win over the size chosen, and one of them alone is refused', () => {
  expect(tray({ dishes: '3', seedsEach: '30' })?.dishes).toEqual([30, 30, 30]);
  expect(messageAt(parse({ dishes: '3' }), 'trays.0.seedsEach')).toMatch(/how many seeds/);
  expect(messageAt(parse({ seedsEach: '30' }), 'trays.0.dishes')).toMatch(/how many dishes/);
  expect(messageAt(parse({ size: '' }), 'trays.0.size')).toMatch(/Choose how many seeds/);
  expect(messageAt(parse({ size: '5x5' }), 'trays.0.size')).toMatch(/Choose how many seeds/);
});

test('a test in groups begins with forty seeds and carries its plan, made again from its line and what it may use', () => {
  const groups = tray({ size: 'groups', line: '0.85', mostSeeds: '400' });
  expect(groups?.dishes).toEqual([20, 20]);
  expect(groups?.plan?.looks[0]).toEqual({ seedsTested: 40, regrowAtMost: 31, keepAtLeast: 37 });
  for (const row of [{ line: '0.85', mostSeeds: '60' }, { line: '0.85' }, { mostSeeds: '400' }, { line: '1' }]) {
    expect(messageAt(parse({ size: 'groups', ...row }), 'trays.0.size')).toMatch(/No plan in groups/);
  }
});

test('the last count is not before the first', () => {
  expect(messageAt(parse({ firstCountDays: '9', finalCountDays: '6' }), 'trays.0.finalCountDays')).toMatch(/before/);
  expect(parse({ firstCountDays: '9', finalCountDays: '9' }).success).toBe(true);
});

describe('the whole form', () => {
  test('a lot that is left out is not looked at, and messages keep the rows as sent', () => {
    const outcome = schema.safeParse({
      setOn: '2026-11-25',
      trays: [
        { leaveOut: 'on', lot: '' },
        { ...ROW, seedFrom: '' },
      ],
    });
    expect(outcome.error?.issues.map(({ path }) => path.join('.'))).toEqual(['trays.1.seedFrom']);
    expect(parse({ leaveOut: 'on' }).success).toBe(false);
  });

  test('needs a lot, takes so many at once, and is not set tomorrow', () => {
    expect(schema.safeParse({ setOn: '2026-11-25' }).success).toBe(false);
    const many = Array.from({ length: MOST_TRAYS_AT_ONCE + 1 }, () => ROW);
    expect(parse({}, { trays: many }).success).toBe(false);
    expect(parse({}, { trays: many.slice(1) }).success).toBe(true);
    expect(messageAt(parse({}, { setOn: '2026-11-26' }), 'setOn')).toMatch(/after today/);
  });
});
