'use client';

import { DeadEnd } from './dead-end';
import { failureNumber, failureWords } from './failure-words';

/** In place of a page whose making failed. */
export function PageFailure({ error, retry }: { error: unknown; retry: () => void }) {
  const number = failureNumber(error);
  return (
    <DeadEnd
      title="This page can't be shown"
      action={
        <button type="button" className="button main" onClick={retry}>
          Try again
        </button>
      }
    >
      <p role="alert">{failureWords(error)}</p>
      {number && <p className="quiet text-sm">Number {number}</p>}
    </DeadEnd>
  );
}
