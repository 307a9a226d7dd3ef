import type { BenchView, NotKept } from '../_store/bench-view';

/**
 * How it stands with the server, in words.
 *
 * @returns a sentence; `quiet` when nothing needs doing
 * Checked in tests/app/bench/link-words.test.ts
 */
export function linkInWords({ link, waiting, notKept }: Pick<BenchView, 'link' | 'waiting' | 'notKept'>): {
  said: string;
  quiet: boolean;
} {
  const keeps = notKept?.what !== 'everything';
  const where = keeps ? 'on this phone' : 'in this page';
  const wait = waiting === 1 ? `1 entry waits ${where}` : `${waiting} entries wait ${where}`;
  switch (link) {
    case 'online':
      return waiting === 0
        ? { said: 'Everything is sent.', quiet: true }
        : { said: `Sending: ${waiting === 1 ? '1 entry' : `${waiting} entries`}.`, quiet: true };
    case 'offline':
      return {
        said:
          waiting > 0
            ? `No connection: ${wait}.`
            : keeps
              ? 'No connection. Go on counting: it is kept on this phone.'
              : 'No connection.',
        quiet: false,
      };
    case 'no-answer':
      return {
        said:
          waiting === 0
            ? `Hilum does not answer.${keeps ? ' Go on counting.' : ''}`
            : `Hilum does not answer: ${wait}.`,
        quiet: false,
      };
    case 'sign-in-needed':
      return { said: waiting === 0 ? 'Signed out.' : `Signed out: ${wait}.`, quiet: false };
  }
}

/**
 * What this phone does not keep, why, and what to do.
 *
 * @returns what comes first in bold, and the rest
 * Checked in tests/app/bench/link-words.test.ts
 */
export function notKeptInWords({ what, noRoom }: NotKept): { first: string; rest: string } {
  const why = noRoom ? 'No room is left on this phone' : 'This browser keeps nothing';
  if (what === 'photos') {
    return {
      first: `${noRoom ? why : 'This browser does not keep a photo'}.`,
      rest: 'Counts and notes are kept; the last photo is not. Leave this page open until it is sent.',
    };
  }
  return {
    first: `${why}: what you enter is held by this page alone.`,
    rest: noRoom
      ? 'Leave it open until everything is sent. To make room, delete pictures or apps you do not need; Hilum then keeps it by itself.'
      : 'Leave it open until everything is sent. Next time open Hilum in an ordinary window, not a private one.',
  };
}
