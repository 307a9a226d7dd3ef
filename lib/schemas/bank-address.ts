import { z } from 'zod';
import { textUpTo } from './field-schemas';

/** Every letter of it stands in each label's code: a longer address makes codes too large for small labels. */
const MOST_LETTERS = 60;

const ADVICE = 'Write an address as it stands in a browser, such as https://seedroom.example:4300.';

/**
 * Where phones reach this bank.
 *
 * @returns 'https://host:port', without a path or a slash at its end
 * Checked in tests/schemas/bank-address.test.ts
 */
export const bankAddress = textUpTo(MOST_LETTERS).transform((text, context) => {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (!url || !/^https?:$/.test(url.protocol) || url.hostname === '' || url.username !== '') {
    context.addIssue(ADVICE);
    return z.NEVER;
  }
  if (url.pathname !== '/' || url.search !== '' || url.hash !== '') {
    context.addIssue('Leave out what follows the name and port: labels add their own.');
    return z.NEVER;
  }
  return url.origin;
});
