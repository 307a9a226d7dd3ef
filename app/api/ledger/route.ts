import { z } from 'zod';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
import { currentPerson } from '@/lib/server/auth/current-person';
import { ledgerFile } from '@/lib/server/queries/ledger-file';
import { getLedgerScope } from '@/lib/server/queries/ledger-scope';
import { today } from '@/lib/server/today';

const scopeSchema = z.object({ lot: z.string().max(100).optional(), accession: z.string().max(100).optional() });

/** The ledger as a CSV file: the lines that the address asks for, of the bank, a lot or an accession. */
export async function GET(request: Request): Promise<Response> {
  if (!(await currentPerson())) return Response.json({ error: 'Sign in first.' }, { status: 401 });
  const asked = Object.fromEntries(new URL(request.url).searchParams);
  const scope = await getLedgerScope(scopeSchema.catch({}).parse(asked));
  if (!scope) return Response.json({ error: 'This is not in the collection.' }, { status: 404 });
  const pieces = ledgerFile(ledgerQuery.parse(asked), scope);
  const encoder = new TextEncoder();
  const body = new ReadableStream<Uint8Array>({
    async pull(controller) {
      const piece = await pieces.next();
      if (piece.done) controller.close();
      else controller.enqueue(encoder.encode(piece.value));
    },
    async cancel() {
      await pieces.return(undefined);
    },
  });
  return new Response(body, {
    headers: {
      'Content-Type': 'text/csv; charset=utf-8; header=present',
      'Content-Disposition': `attachment; filename="ledger-${today()}.csv"`,
      'Cache-Control': 'no-store',
      'X-Content-Type-Options': 'nosniff',
    },
  });
}
