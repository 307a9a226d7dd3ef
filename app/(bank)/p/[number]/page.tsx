import { notFound, redirect } from 'next/navigation';
import { packetPath } from '@/app/_format/store-path';
import { packetCode } from '@/lib/domain/labels/code-text';
import { requirePerson } from '@/lib/server/auth/require-person';
import { findByCode } from '@/lib/server/queries/scanned';

interface Props {
  params: Promise<{ number: string }>;
}

/** Where the code of a packet's label leads. */
export default async function PacketCodePage({ params }: Props) {
  await requirePerson('visitor');
  const found = await findByCode(packetCode(decodeURIComponent((await params).number), 'https://code'));
  if (!found) notFound();
  redirect(packetPath(found.number));
}
