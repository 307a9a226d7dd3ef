import { createHash } from 'node:crypto';
import { refusalOf } from '@/app/api/_answers/refusal';
import { currentPerson } from '@/lib/server/auth/current-person';
import { requireRole } from '@/lib/server/commands/command';
import { getBenchSnapshot } from '@/lib/server/queries/bench-snapshot';

/** Every open tray with its counts, for a phone at the bench; 304 when nothing has changed since it last asked. */
export async function GET(request: Request): Promise<Response> {
  try {
    const person = requireRole(await currentPerson(), 'volunteer');
    const body = JSON.stringify(getBenchSnapshot(person));
    const tag = `"${createHash('sha256').update(body).digest('base64url')}"`;
    const headers = { ETag: tag, 'Cache-Control': 'no-store' };
    // A server in front that compresses may have weakened the tag.
    const had = request.headers.get('if-none-match')?.replace(/^W\//, '');
    if (had === tag) return new Response(null, { status: 304, headers });
    return new Response(body, { headers: { ...headers, 'Content-Type': 'application/json; charset=utf-8' } });
  } catch (error) {
    return refusalOf(error, 'reading the bench');
  }
}
