import { expect, it } from 'vitest';
import { signInPath, wayBack } from '@/lib/schemas/way-back';

it('leads back to pages of the app, with what stood behind the question mark', () => {
  for (const address of ['/stores/packets/P-00012', '/p/P-00012', '/collection/lots?page=2&q=%C3%A9', '/']) {
    expect(wayBack.parse(address)).toBe(address);
  }
  expect(signInPath('/p/P-00012?a=1')).toBe('/sign-in?then=%2Fp%2FP-00012%3Fa%3D1');
});

it.each([
  'https://elsewhere.example/',
  '//elsewhere.example/',
  '/\\elsewhere.example/',
  '/\t/elsewhere.example',
  '\\\\elsewhere.example',
  'javascript:alert(1)',
  'stores',
  `/${'x'.repeat(2000)}`,
  undefined,
  null,
  ['/stores'],
])('leads nowhere else: %j', (address) => {
  const back = wayBack.parse(address);
  expect(new URL(back, 'http://here.example').origin).toBe('http://here.example');
  expect(back.startsWith('//')).toBe(false);
});

it('says nothing of the way back where it is the first page', () => {
  expect([signInPath('/'), signInPath(null), signInPath('//elsewhere.example')]).toEqual([
    '/sign-in',
    '/sign-in',
    '/sign-in',
  ]);
});
