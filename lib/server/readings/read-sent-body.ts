import 'server-only';
import { parse } from 'csv-parse/sync';
import { MAX_SENT_BYTES, SENT_COLUMNS } from '@/lib/schemas/sent-readings';
import { bytesUpTo } from '../body-up-to';

export type SentBody =
  /** firstRow: the line of the first reading in a CSV body; null for JSON, where readings count from 0 */
  { ok: true; value: unknown; firstRow: number | null } | { ok: false; status: 400 | 413 | 415; detail: string };

/**
 * The body of a request as an object that sentReadingsSchema may look at.
 *
 * @returns why not: 413 too large (it is not read to its end), 415 neither JSON nor CSV, 400 not what it says it is
 * Checked in tests/server/readings/post-readings.test.ts
 */
export async function readSentBody(request: Request): Promise<SentBody> {
  const type = (request.headers.get('content-type') ?? '').split(';')[0]?.trim().toLowerCase();
  if (type !== 'application/json' && type !== 'text/csv') {
    return { ok: false, status: 415, detail: 'Send Content-Type: application/json or text/csv.' };
  }
  const bytes = await bytesUpTo(request, MAX_SENT_BYTES);
  if (bytes === null) {
    return {
      ok: false,
      status: 413,
      detail: `The body is larger than ${MAX_SENT_BYTES / 1024 / 1024} MB. Send less at a time.`,
    };
  }
  const text = new TextDecoder().decode(bytes);
  try {
    return type === 'text/csv' ? csvBody(text) : { ok: true, value: JSON.parse(text), firstRow: null };
  } catch (error) {
    const why = error instanceof Error ? error.message : '';
    return { ok: false, status: 400, detail: `The body is not ${type === 'text/csv' ? 'CSV' : 'JSON'}: ${why}` };
  }
}

function csvBody(text: string): SentBody {
  const [header = [], ...rows] = parse(text, { bom: true, trim: true, skip_empty_lines: true }) as string[][];
  const columns = SENT_COLUMNS.map((name) => header.indexOf(name));
  if (columns[0] === -1 || columns[1] === -1) {
    return {
      ok: false,
      status: 400,
      detail: `The first line must name the columns: ${SENT_COLUMNS.join(',')} (the last may be left out).`,
    };
  }
  const [at = -1, temperature = -1, humidity = -1] = columns;
  const figure = (cell: string | undefined) => (cell === undefined || cell === '' ? undefined : Number(cell));
  return {
    ok: true,
    firstRow: 2,
    value: {
      readings: rows.map((row) => ({
        at: row[at],
        temperatureC: figure(row[temperature]),
        humidityPercent: figure(row[humidity]),
      })),
    },
  };
}
