import { notFound, redirect } from 'next/navigation';
import { readParameter } from '@/app/_format/read-parameter';
import { readCode } from '@/lib/domain/labels/read-code';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { findTrayStatus } from '@/lib/server/queries/tray-status';
import { codeLeadsTo } from '../_parts/code-leads-to';

interface Props {
  params: Promise<{ number: string }>;
}

/** Where the code on a dish leads. */
export default async function TrayCodePage({ params }: Props) {
  const person = await requirePerson('visitor');
  const code = readCode(readParameter((await params).number));
  const status = code?.kind === 'tray' ? await findTrayStatus(code.number) : null;
  if (!code || status === null) notFound();
  redirect(codeLeadsTo(code.number, status, mayActAs(person, 'volunteer')));
}
