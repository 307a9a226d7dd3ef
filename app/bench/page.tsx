import type { Metadata } from 'next';
import { requirePerson } from '@/lib/server/auth/require-person';
import { BenchScreen } from './_parts/bench-screen';

export const metadata: Metadata = { title: 'Bench' };

/**
 * Nothing that changes stands in this page: a phone keeps it for when there is no connection, and reads the trays through
 * /api/bench and from its own memory.
 */
export default async function BenchPage() {
  await requirePerson('volunteer');
  return <BenchScreen />;
}
