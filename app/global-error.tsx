'use client';

import './globals.css';
import { failureNumber, failureWords } from './_components/failure-words';

/** When not even the outermost frame could be made: plain, with nothing that could fail again. */
export default function GlobalError({ error, retry }: { error: unknown; retry: () => void }) {
  const number = failureNumber(error);
  return (
    <html lang="en">
      <body>
        <title>Hilum can't show this page</title>
        <main className="mx-auto grid w-full max-w-xl content-start gap-4 px-4 py-16">
          <h1>This page can't be shown</h1>
          <p role="alert" className="say">
            {failureWords(error)}
          </p>
          {number && <p className="quiet text-sm">Number {number}</p>}
          <div>
            <button type="button" className="button main" onClick={retry}>
              Try again
            </button>
          </div>
        </main>
      </body>
    </html>
  );
}
