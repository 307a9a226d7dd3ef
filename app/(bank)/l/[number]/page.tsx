import { notFound, redirect } from 'next/navigation';
import { lotPath } from '@/app/_format/links';
import { lotCode } from '@/lib/domain/labels/code-text';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findByCode } from '@/lib/server/queries/scanned';

interface Props {
  params: Promise<{ number: string }>;
}

/** Where the code of a lot's label leads. */
export default async function LotCodePage({ params }: Props) {
  await requirePerson('visitor');
  const found = await findByCode(lotCode(decodeURIComponent((await params).number), 'https://code'));
  if (!found) notFound();
  redirect(lotPath(found.number));
}
