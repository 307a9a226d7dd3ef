import { z } from 'zod';
import { currentPerson } from '@/lib/server/auth/current-person';
import { suggestAccessions } from '@/lib/server/queries/accessions';

const querySchema = z.object({ q: z.string().trim().max(200).catch('') });

/** Accessions to offer while somebody types a number or name. */
export async function GET(request: Request): Promise<Response> {
  if (!(await currentPerson())) return Response.json({ error: 'Sign in first.' }, { status: 401 });
  const { q } = querySchema.parse(Object.fromEntries(new URL(request.url).searchParams));
  return Response.json({ accessions: await suggestAccessions(q) }, { headers: { 'Cache-Control': 'no-store' } });
}
