import { expect, test } from 'vitest';
import { linkInWords as inWords, notKeptInWords } from '@/app/bench/_parts/link-words';
import type { BenchView } from '@/app/bench/_store/bench-view';

const linkInWords = (how: { link: BenchView['link']; waiting: number }) => inWords({ ...how, notKept: null });

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

test('nothing is called kept on the phone that only the open page holds', () => {
  const notKept = { what: 'everything', noRoom: true } as const;
  for (const link of ['online', 'offline', 'no-answer', 'sign-in-needed'] as const) {
    for (const waiting of [0, 3]) {
      const { said } = inWords({ link, waiting, notKept });
      expect(said).not.toMatch(/on this phone|go on counting/i);
    }
  }
  expect(inWords({ link: 'offline', waiting: 3, notKept }).said).toContain('3 entries wait in this page');
  // Where only a photograph found no room, counts are kept as ever.
  expect(inWords({ link: 'offline', waiting: 3, notKept: { ...notKept, what: 'photos' } }).said).toContain(
    'on this phone',
  );
});

test('what is not kept comes with why and with what to do', () => {
  const full = notKeptInWords({ what: 'everything', noRoom: true });
  expect(`${full.first} ${full.rest}`).toMatch(/No room is left.*Leave it open until everything is sent.*delete/);
  const privately = notKeptInWords({ what: 'everything', noRoom: false });
  expect(`${privately.first} ${privately.rest}`).toMatch(/keeps nothing.*Leave it open.*not a private one/);
  const photos = notKeptInWords({ what: 'photos', noRoom: true });
  expect(`${photos.first} ${photos.rest}`).toMatch(/Counts and notes are kept.*Leave this page open/);
});
