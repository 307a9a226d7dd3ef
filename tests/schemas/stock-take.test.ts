import { expect, test } from 'vitest';
import { closeStockTakeSchema, readStockTakeEntry, recordStockTakeLineSchema } from '../../lib/schemas/stock-take';

test.each([
  ['1240', 'seeds', '1240'],
  [' 1 240 ', 'seeds', '1 240'],
  ['1240 seeds', 'seeds', '1240'],
  ['1 seed', 'seeds', '1'],
  ['3,1 g', 'grams', '3,1'],
  ['3.1G', 'grams', '3.1'],
  ['12 grams', 'grams', '12'],
  ['3.1', 'seeds', '3.1'],
])('%j is an amount in %s', (typed, unit, amount) => {
  expect(readStockTakeEntry(typed)).toEqual({ kind: 'amount', unit, amount });
});

test.each(['P-00012', 'p 12', 'L-2019-031', 'https://seedroom.example/p/P-00012', 'TG-04-26', '', '12 kg'])(
  '%j is a code',
  (text) => expect(readStockTakeEntry(text)).toEqual({ kind: 'code', text }),
);

const line = { stockTakeId: 's', packetId: 'p', finding: 'here', version: '0' };
const read = (rest: Record<string, unknown>) => recordStockTakeLineSchema.safeParse({ ...line, ...rest });

test('a line without an amount is a tick; no seed at all is an amount', () => {
  expect(read({}).data?.amount).toBeNull();
  expect(read({ amount: '', unit: 'seeds' }).data?.amount).toBeNull();
  expect(read({ amount: '0', unit: 'seeds' }).data?.amount).toEqual({ seeds: 0 });
  expect(read({ amount: '3,1', unit: 'grams' }).data?.amount).toEqual({ grams: 3.1 });
});

test('a packet that is not here has no amount, whatever was typed', () => {
  expect(read({ finding: 'not-here', amount: '12', unit: 'seeds' }).data?.amount).toBeNull();
});

test.each([
  [{ amount: '12' }, 'unit', 'seeds or grams'],
  [{ amount: '3.1', unit: 'seeds' }, 'amount', 'whole number'],
  [{ amount: '1,240', unit: 'seeds' }, 'amount', 'This could be 1240 or 1.24'],
  [{ amount: '0', unit: 'grams' }, 'amount', 'between'],
  [{ amount: 'a few', unit: 'seeds' }, 'amount', 'Write a number'],
  [{ finding: 'perhaps' }, 'finding', 'Choose'],
])('%j is refused beside %s', (rest, field, message) => {
  const issue = read(rest).error?.issues.find(({ path }) => path[0] === field);
  expect(issue?.message).toContain(message);
});

test('closing without anything to decide sends no decisions', () => {
  expect(closeStockTakeSchema.parse({ stockTakeId: 's' })).toEqual({
    stockTakeId: 's',
    decisions: {},
    closeUnfinished: false,
  });
});
