import type { BenchView } from '../_store/bench-view';

/**
 * How it stands with the server, in words.
 *
 * @returns a sentence; `quiet` when nothing needs doing
 * Checked in tests/app/bench/link-words.test.ts
 */
export function linkInWords({ link, waiting }: Pick<BenchView, 'link' | 'waiting'>): { said: string; quiet: boolean } {
  const wait = waiting === 1 ? '1 entry waits on this phone' : `${waiting} entries wait on this phone`;
  switch (link) {
    case 'online':
      return waiting === 0
        ? { said: 'Everything is sent.', quiet: true }
        : { said: `Sending: ${waiting === 1 ? '1 entry' : `${waiting} entries`}.`, quiet: true };
    case 'offline':
      return {
        said: waiting === 0 ? 'No connection. Go on counting: it is kept on this phone.' : `No connection: ${wait}.`,
        quiet: false,
      };
    case 'no-answer':
      return {
        said: waiting === 0 ? 'Hilum does not answer. Go on counting.' : `Hilum does not answer: ${wait}.`,
        quiet: false,
      };
    case 'sign-in-needed':
      return { said: waiting === 0 ? 'Signed out.' : `Signed out: ${wait}.`, quiet: false };
  }
}
