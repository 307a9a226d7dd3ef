/**
 * What a page may say about its own failure. In production the browser gets no message of a server error, only its
 * digest; an AppError's digest is 'hilum-' and its code (lib/server/app-error.ts), which these are the words for.
 */
const WORDS = new Map(
  Object.entries({
    'hilum-database-busy': 'Another program is writing to the collection just now. Wait a moment, then try again.',
    'hilum-database-read-only':
      'The collection can be read but not written: its file or folder is write-protected. Allow writing to the data folder, then try again.',
    'hilum-database-missing':
      "The collection's file can't be opened. If it was moved, put it back; otherwise stop Hilum and start it again with 'npm run up'.",
    'hilum-database-full': 'The disk is full. Make room, then try again.',
    'hilum-sign-in-needed': 'You are not signed in any more. Sign in, then come back.',
    'hilum-not-allowed': 'Your role does not allow this. Ask a steward.',
    'hilum-not-found': 'That is not in the collection.',
  }),
);

const digestOf = (error: unknown): string =>
  typeof error === 'object' && error !== null && 'digest' in error ? String(error.digest) : '';

/** Plain words for an error that a page met; never its own message or stack. */
export const failureWords = (error: unknown): string =>
  WORDS.get(digestOf(error)) ??
  'Something went wrong on our side. Nothing was changed. Try again; if it happens again, tell whoever looks after this computer.';

/** The number under which the server's log has it; null when the words say enough. */
export const failureNumber = (error: unknown): string | null => {
  const digest = digestOf(error);
  return digest === '' || WORDS.has(digest) ? null : digest;
};
