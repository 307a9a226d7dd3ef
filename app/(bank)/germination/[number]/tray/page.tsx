import type { Metadata } from 'next';
import { notFound } from 'next/navigation';
import { readParameter } from '@/app/_format/read-parameter';
import { requirePerson } from '@/lib/server/auth/require-person';
import { mayActAs } from '@/lib/server/auth/roles';
import { getTrayPage } from '@/lib/server/queries/tray-page';
import { TrayView } from '../_parts/tray-view';

interface Props {
  params: Promise<{ number: string }>;
}

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  return { title: `Tray ${readParameter((await params).number)}` };
}

/** The counts behind a finished test, or a tray under way. */
export default async function TrayPage({ params }: Props) {
  const person = await requirePerson('visitor');
  const tray = await getTrayPage(readParameter((await params).number));
  if (!tray) notFound();
  return <TrayView tray={tray} mayWrite={mayActAs(person, 'volunteer')} />;
}
