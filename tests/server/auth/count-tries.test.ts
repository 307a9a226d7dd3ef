import { expect, it } from 'vitest';
import { countTry, forgiveTries, type Tries } from '@/lib/server/auth/count-tries';
import { reader } from '@/lib/server/database/connections';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const ada: Tries = { purpose: 'sign-in', name: 'ada', address: '192.0.2.7' };
const NOON = Date.parse('2026-11-25T12:00:00Z');
const SECOND = 1000;
const outcome = async (tries: Tries, now: number) => {
  try {
    await countTry(tries, now);
    return 'let through';
  } catch (error) {
    return (error as { userMessage: string }).userMessage;
  }
};
const tryTimes = async (times: number, tries: Tries, now: number) => {
  for (let i = 0; i < times; i += 1) await countTry(tries, now);
};

it('lets five tries through and says how long to wait before the sixth', async () => {
  await tryTimes(5, ada, NOON);
  expect(await outcome(ada, NOON + SECOND)).toBe('Too many wrong tries. Wait 59 seconds, then try again.');
  expect(await outcome(ada, NOON + 59 * SECOND)).toBe('Too many wrong tries. Wait 1 second, then try again.');
  expect(await outcome(ada, NOON + 60 * SECOND)).toBe('let through');
});

it('doubles the wait with each further wrong try, up to 15 minutes', async () => {
  await tryTimes(5, ada, NOON);
  let now = NOON;
  for (const minutes of [1, 2, 4, 8, 15, 15]) {
    now += minutes * 60 * SECOND;
    expect(await outcome(ada, now - 1)).toMatch('Too many');
    expect(await outcome(ada, now)).toBe('let through');
  }
});

it('counts a refused try no further', async () => {
  await tryTimes(5, ada, NOON);
  for (let i = 0; i < 10; i += 1) await outcome(ada, NOON + SECOND);
  expect(await outcome(ada, NOON + 60 * SECOND)).toBe('let through');
});

it('counts tries that are sent all at once one by one', async () => {
  const outcomes = await Promise.all(Array.from({ length: 30 }, () => outcome(ada, NOON)));
  expect(outcomes.filter((text) => text === 'let through')).toHaveLength(5);
});

it('takes capitals and spaces in the name for the same name', async () => {
  await tryTimes(5, ada, NOON);
  expect(await outcome({ ...ada, name: ' ADA ' }, NOON)).toMatch('Too many');
});

it('lets others, other places and other purposes go on', async () => {
  await tryTimes(5, ada, NOON);
  expect(await outcome({ ...ada, name: 'ben' }, NOON)).toBe('let through');
  expect(await outcome({ ...ada, address: '192.0.2.8' }, NOON)).toBe('let through');
  expect(await outcome({ ...ada, purpose: 'password-code' }, NOON)).toBe('let through');
});

it('stops guessing at one name from ever new addresses after twenty tries', async () => {
  for (let i = 0; i < 20; i += 1) await countTry({ ...ada, address: `192.0.2.${i}` }, NOON);
  expect(await outcome({ ...ada, address: '198.51.100.1' }, NOON)).toMatch('Too many');
});

it('forgives who got in, and everybody after an hour', async () => {
  await tryTimes(5, ada, NOON);
  await forgiveTries(ada);
  expect(await outcome(ada, NOON)).toBe('let through');
  await tryTimes(4, ada, NOON);
  expect(await outcome(ada, NOON + SECOND)).toMatch('Too many');
  await tryTimes(5, ada, NOON + 3_601 * SECOND);
});

it('keeps no name, because a password may have been typed in its place', async () => {
  await countTry({ ...ada, name: 'my secret passphrase' }, NOON);
  expect(JSON.stringify(await reader().rateLimit.findMany({ select: { key: true } }))).not.toContain('secret');
});
