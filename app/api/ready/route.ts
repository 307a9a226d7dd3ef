import { AppError } from '@/lib/server/app-error';
import { assertReady } from '@/lib/server/database/assert-ready';
import { log } from '@/lib/server/log';

/** The database opens and has every change it needs. Open to anybody: it says yes, or no and why in a word. */
export function GET(): Response {
  const headers = { 'Cache-Control': 'no-store' };
  try {
    assertReady();
    return Response.json({ status: 'ready' }, { headers });
  } catch (error) {
    log.warn({ error }, 'not ready');
    const because = error instanceof AppError ? error.code : 'failed';
    return Response.json({ status: 'not ready', because }, { status: 503, headers });
  }
}

export const dynamic = 'force-dynamic';
