import { guessColumns } from '@/lib/domain/spreadsheet/guess-columns';
import { readTable } from '@/lib/domain/spreadsheet/read-table';
import { IMPORT_FIELDS, type ImportKind } from '@/lib/schemas/import/fields';
import { runImport } from '@/lib/server/commands/run-import';
import { uploadImport } from '@/lib/server/commands/upload-import';
import { STEWARD } from './people';

/** Uploads a table given as text and gives its id with the columns as guessed. */
export async function uploadText(kind: ImportKind, text: string) {
  const bytes = new TextEncoder().encode(text);
  const { id } = await uploadImport(STEWARD, { kind, fileName: `${kind}.csv`, bytes });
  const table = readTable(bytes);
  if (!table.ok) throw new Error(table.reason);
  const { mapping } = guessColumns(
    table.header,
    table.rows.map((row) => row.cells),
    IMPORT_FIELDS[kind],
  );
  return { importId: id, columns: mapping };
}

/** Uploads and imports, with new names created. */
export async function importText(kind: ImportKind, text: string) {
  return runImport(STEWARD, { ...(await uploadText(kind, text)), createNames: 'on' });
}
