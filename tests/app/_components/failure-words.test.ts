import { expect, it } from 'vitest';
import { failureNumber, failureWords } from '@/app/_components/failure-words';
import { AppError, type AppErrorCode } from '@/lib/server/app-error';

/** As it reaches the browser in production: a general message, and the digest. */
const inBrowser = (error: AppError) => Object.assign(new Error('An error occurred'), { digest: error.digest });

it.each<[AppErrorCode, RegExp]>([
  ['database-busy', /Another program is writing/],
  ['database-missing', /can't be opened/],
  ['database-read-only', /write-protected/],
  ['database-full', /disk is full/],
  ['sign-in-needed', /not signed in/],
  ['not-allowed', /role/],
  ['not-found', /not in the collection/],
])('says %s in words, from the digest alone', (code, words) => {
  const error = inBrowser(new AppError(code, 'internal words'));
  expect(failureWords(error)).toMatch(words);
  expect(failureNumber(error)).toBeNull();
});

it('says of any other error only its number', () => {
  const error = Object.assign(new Error('SELECT secret FROM table at /somewhere/file.ts:12'), { digest: '1234567' });
  expect(failureWords(error)).toMatch(/went wrong on our side/);
  expect(failureWords(error)).not.toMatch(/secret|file\.ts/);
  expect(failureNumber(error)).toBe('1234567');
});

it.each([[undefined], [null], ['a text'], [new Error('no digest')], [{ digest: 'toString' }]])(
  'has words even for what is hardly an error: %s',
  (error) => expect(failureWords(error)).toMatch(/went wrong on our side/),
);
