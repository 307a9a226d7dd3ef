import 'server-only';
import { type ColumnMapping, guessColumns } from '@/lib/domain/spreadsheet/guess-columns';
import { checkRows } from '@/lib/schemas/import/dry-run';
import { IMPORT_FIELDS, IMPORT_KINDS, type ImportKind } from '@/lib/schemas/import/fields';
import { connections, reader } from '../database/connections';
import { readUpload } from '../import/import-files';
import { type ImportProgress, progressOf } from '../import/import-progress';
import { loadImportContext } from '../import/load-import-context';
import { today } from '../today';

export interface ImportSummary {
  id: string;
  kind: string;
  fileName: string;
  status: string;
  rows: number;
  createdAt: Date;
}

const LATEST_SHOWN = 20;

export async function findImports(): Promise<ImportSummary[]> {
  return reader().importJob.findMany({
    orderBy: { createdAt: 'desc' },
    take: LATEST_SHOWN,
    select: { id: true, kind: true, fileName: true, status: true, rows: true, createdAt: true },
  });
}

export async function getImport(id: string): Promise<(ImportSummary & { kind: ImportKind }) | null> {
  const job = await reader().importJob.findUnique({
    where: { id },
    select: { id: true, kind: true, fileName: true, status: true, rows: true, createdAt: true },
  });
  const kind = IMPORT_KINDS.find((known) => known === job?.kind);
  return job && kind ? { ...job, kind } : null;
}

/** The file with its columns matched, as guessed or as chosen, and what would happen if it were imported now. */
export async function checkImport(id: string, kind: ImportKind, chosen: ColumnMapping | null) {
  const table = await readUpload(id);
  const fields = IMPORT_FIELDS[kind];
  const guessed = guessColumns(
    table.header,
    table.rows.map((row) => row.cells),
    fields,
  );
  const mapping = chosen ?? guessed.mapping;
  const dryRun = checkRows(kind, table, mapping, loadImportContext(connections().rows, kind, today()));
  return {
    header: table.header,
    sample: table.rows.slice(0, 5),
    fields: fields.map(({ key, label, required }) => ({ key, label, required })),
    mapping,
    unused: guessed.unused.map((column) => table.header[column] ?? ''),
    dryRun,
  };
}

/** How far an import is: running with figures, or its status in the database. */
export async function getImportState(id: string): Promise<{ status: string; progress: ImportProgress | null }> {
  const progress = progressOf(id);
  if (progress) return { status: 'running', progress };
  const job = await reader().importJob.findUnique({ where: { id }, select: { status: true } });
  return { status: job?.status ?? 'missing', progress: null };
}
