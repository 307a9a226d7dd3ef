import { expect, test } from 'vitest';
import { linkInWords } from '@/app/bench/_parts/link-words';

test('without a connection it is said how much waits, and that counting goes on', () => {
  expect(linkInWords({ link: 'offline', waiting: 7 }).said).toBe('No connection: 7 entries wait on this phone.');
  expect(linkInWords({ link: 'offline', waiting: 1 }).said).toBe('No connection: 1 entry waits on this phone.');
  expect(linkInWords({ link: 'offline', waiting: 0 }).said).toMatch(/Go on counting/);
});

test('nothing is called sent while something waits', () => {
  expect(linkInWords({ link: 'online', waiting: 0 }).said).toBe('Everything is sent.');
  for (const link of ['online', 'offline', 'no-answer', 'sign-in-needed'] as const) {
    expect(linkInWords({ link, waiting: 3 }).said).toContain('3 entries');
    expect(linkInWords({ link, waiting: 3 }).said).not.toMatch(/is sent/);
  }
});

test('only a link that needs nobody is quiet', () => {
  expect(linkInWords({ link: 'online', waiting: 3 }).quiet).toBe(true);
  expect(linkInWords({ link: 'no-answer', waiting: 0 }).quiet).toBe(false);
  expect(linkInWords({ link: 'sign-in-needed', waiting: 0 }).quiet).toBe(false);
});
