import 'server-only';
import { readTable } from '@/lib/domain/spreadsheet/read-table';
import { uploadImportSchema } from '@/lib/schemas/import/import-request';
import { AppError } from '../app-error';
import { keepUpload } from '../import/import-files';
import { newId } from '../new-id';
import { defineCommand } from './command';

/** Takes a spreadsheet in for checking. Nothing of it enters the collection yet. */
export const uploadImport = defineCommand({
  name: 'upload-import',
  role: 'steward',
  schema: uploadImportSchema,
  async run({ tx, person, audit }, { kind, fileName, bytes }) {
    const table = readTable(bytes);
    if (!table.ok)
      throw new AppError('invalid-input', 'This file cannot be read.', { fieldErrors: { file: table.reason } });
    const id = newId();
    await keepUpload(id, bytes);
    await tx.importJob.create({
      data: { id, kind, fileName, status: 'uploaded', rows: table.rows.length, byId: person.id },
    });
    await audit({
      entity: 'import',
      entityId: id,
      summary: `Uploaded ${fileName} (${kind}, ${table.rows.length} rows) for checking`,
    });
    return { id };
  },
});
