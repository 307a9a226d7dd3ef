import { problem } from '@/app/api/_answers/problem';
import { refusalOf } from '@/app/api/_answers/refusal';
import { MAX_ENTRIES_BYTES } from '@/lib/schemas/bench-entries';
import { currentPerson } from '@/lib/server/auth/current-person';
import { bytesUpTo } from '@/lib/server/body-up-to';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { requireRole } from '@/lib/server/commands/command';

/** Counts and notes from a phone at the bench; each is answered by itself (lib/schemas/bench-wire.ts). */
export async function POST(request: Request): Promise<Response> {
  try {
    const person = requireRole(await currentPerson(), 'volunteer');
    // A form of a foreign page cannot send this type without the browser asking first.
    if (!/^application\/json\s*(;|$)/i.test(request.headers.get('content-type') ?? '')) {
      return problem(415, 'Not JSON', 'Send Content-Type: application/json.');
    }
    const bytes = await bytesUpTo(request, MAX_ENTRIES_BYTES);
    if (bytes === null) return problem(413, 'Too much at once', 'Send fewer entries at a time.');
    const sent = parse(bytes);
    if (sent === undefined) return problem(400, 'Not JSON', 'The body cannot be read.');
    return Response.json(await addBenchEntries(person, sent), { headers: { 'Cache-Control': 'no-store' } });
  } catch (error) {
    return refusalOf(error, 'taking entries from the bench');
  }
}

function parse(bytes: Uint8Array): unknown {
  try {
    return JSON.parse(new TextDecoder().decode(bytes));
  } catch {
    return undefined;
  }
}
