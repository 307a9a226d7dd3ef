import { expect, test } from 'vitest';
import { wayBack } from '@/app/_actions/way-back';

const form = (back?: string) => {
  const data = new FormData();
  if (back !== undefined) data.set('back', back);
  return data;
};

test.each(['/stores/ledger?reason=count&page=2', '/collection/lots/L-2020-001/ledger', '/stores'])(
  'goes back to %s',
  (back) => expect(wayBack(form(back), '/collection')).toBe(back),
);

test.each(['//elsewhere.example/stores', 'https://elsewhere.example', '/stores\\..\\x', '/storesx', '', 'stores'])(
  'does not go to %j',
  (back) => expect(wayBack(form(back), '/collection')).toBe('/collection'),
);

test('goes on where the action says when the form names nothing', () => {
  expect(wayBack(form(), '/collection')).toBe('/collection');
});
