import { z } from 'zod';
import { ledgerQuery } from '@/lib/schemas/ledger-query';
import { currentPerson } from '@/lib/server/auth/current-person';
import { ledgerFile } from '@/lib/server/queries/ledger-file';
import { getLedgerScope } from '@/lib/server/queries/ledger-scope';
import { today } from '@/lib/server/today';
import { csvDownload } from '../_answers/csv-download';

const scopeSchema = z.object({ lot: z.string().max(100).optional(), accession: z.string().max(100).optional() });

/** The ledger as a CSV file: the lines that the address asks for, of the bank, a lot or an accession. */
export async function GET(request: Request): Promise<Response> {
  if (!(await currentPerson())) return Response.json({ error: 'Sign in first.' }, { status: 401 });
  const asked = Object.fromEntries(new URL(request.url).searchParams);
  const scope = await getLedgerScope(scopeSchema.catch({}).parse(asked));
  if (!scope) return Response.json({ error: 'This is not in the collection.' }, { status: 404 });
  return csvDownload(ledgerFile(ledgerQuery.parse(asked), scope), `ledger-${today()}.csv`);
}
