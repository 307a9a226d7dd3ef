'use client';

import { PageFailure } from '@/app/_components/page-failure';

/** As app/error.tsx, with the places to go beside it. */
export default function BankPageError({ error, retry }: { error: unknown; retry: () => void }) {
  return <PageFailure error={error} retry={retry} />;
}
