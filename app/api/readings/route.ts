import type { z } from 'zod';
import { problem } from '@/app/api/_answers/problem';
import { sentReadingsSchema } from '@/lib/schemas/sent-readings';
import { AppError } from '@/lib/server/app-error';
import { log } from '@/lib/server/log';
import { addSentReadings, findReadingToken } from '@/lib/server/readings/add-sent-readings';
import { latestInstant } from '@/lib/server/readings/latest-instant';
import { readSentBody } from '@/lib/server/readings/read-sent-body';

/** Of many wrong readings so many are named. */
const ERRORS_NAMED = 20;

interface NamedError {
  /** place in the list, from 0, or line of the CSV body */
  reading?: number;
  line?: number;
  field: string;
  message: string;
}

/**
 * Readings from a script: the token says which store. docs/guide/readings.md describes it. Problems come as
 * application/problem+json (RFC 9457) and name the reading; then nothing was added.
 */
export async function POST(request: Request): Promise<Response> {
  try {
    const secret = /^Bearer ([\w-]{20,200})$/i.exec(request.headers.get('authorization') ?? '')?.[1];
    const token = secret ? await findReadingToken(secret) : null;
    if (!token) {
      return problem(401, 'No valid token', 'Send the header Authorization: Bearer and the token of the store.', {
        headers: { 'WWW-Authenticate': 'Bearer' },
      });
    }
    const body = await readSentBody(request);
    if (!body.ok) return problem(body.status, 'The body cannot be read', body.detail);
    const parsed = sentReadingsSchema(latestInstant()).safeParse(body.value);
    if (!parsed.success) {
      return problem(422, 'Some readings cannot be taken', 'Nothing was added. Mend or leave out what is named.', {
        more: { errors: namedErrors(parsed.error, body.firstRow) },
      });
    }
    if (parsed.data.store !== undefined && parsed.data.store !== token.storeId) {
      return problem(403, 'Another store', 'This token is for another store than the one that was named.');
    }
    const outcome = await addSentReadings(token, parsed.data.readings);
    return Response.json({ store: token.storeId, ...outcome }, { headers: { 'Cache-Control': 'no-store' } });
  } catch (error) {
    return failure(error);
  }
}

function namedErrors(error: z.ZodError, firstRow: number | null): NamedError[] {
  return error.issues.slice(0, ERRORS_NAMED).map(({ path, message }) => {
    const [list, index, field] = path;
    if (list !== 'readings' || typeof index !== 'number') return { field: path.join('.') || 'body', message };
    const place = firstRow === null ? { reading: index } : { line: index + firstRow };
    return { ...place, field: String(field ?? 'reading'), message };
  });
}

function failure(error: unknown): Response {
  if (error instanceof AppError && error.code === 'not-allowed')
    return problem(401, 'No valid token', error.userMessage);
  if (error instanceof AppError) return problem(503, 'The collection cannot be written', error.userMessage);
  log.error({ error }, 'taking sent readings failed');
  return problem(500, 'A fault of Hilum', 'Nothing was added. Send the readings again later.');
}
