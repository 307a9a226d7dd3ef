'use client';

import { PageFailure } from './_components/page-failure';

/** In place of a page, or of the frame round the bank's pages, whose making failed. */
export default function PageError({ error, retry }: { error: unknown; retry: () => void }) {
  return (
    <main>
      <PageFailure error={error} retry={retry} />
    </main>
  );
}
