import { germinationReportQuery } from '@/lib/schemas/germination-report-query';
import { currentPerson } from '@/lib/server/auth/current-person';
import { germinationReportFile } from '@/lib/server/queries/germination-report-file';
import { today } from '@/lib/server/today';
import { csvDownload } from '../_answers/csv-download';

/** The germination tests of a period as a CSV file. */
export async function GET(request: Request): Promise<Response> {
  if (!(await currentPerson())) return Response.json({ error: 'Sign in first.' }, { status: 401 });
  const { from, to } = germinationReportQuery(today()).parse(Object.fromEntries(new URL(request.url).searchParams));
  return csvDownload(germinationReportFile({ from, to }), `germination-tests-${from}-${to}.csv`);
}
