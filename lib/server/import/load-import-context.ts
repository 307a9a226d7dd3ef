import 'server-only';
import type Database from 'better-sqlite3';
import { OTHER_CROP_NAMES } from '@/lib/domain/reference/other-names';
import type { ImportKind } from '@/lib/schemas/import/fields';
import type { ImportContext } from '@/lib/schemas/import/import-context';

/** The collection as a dry run needs it: numbers and names in use. */
export function loadImportContext(database: Database.Database, kind: ImportKind, today: string): ImportContext {
  const column = (sql: string) => database.prepare<[], string>(sql).pluck().all();
  return {
    today,
    accessionNumbers: kind === 'germination tests' ? [] : column(`SELECT "number" FROM "Accession"`),
    lotNumbers: kind === 'accessions' ? [] : column(`SELECT "number" FROM "Lot"`),
    crops: database
      .prepare<[], { name: string; scientificName: string }>(`SELECT "name", "scientificName" FROM "Crop"`)
      .all()
      .map(({ name, scientificName }) => ({ name, synonyms: [scientificName, ...(OTHER_CROP_NAMES[name] ?? [])] })),
    stores: column(`SELECT "name" FROM "Store"`),
    tests:
      kind === 'germination tests'
        ? database
            .prepare<[], { lotNumber: string; setOn: string }>(
              `SELECT l."number" AS "lotNumber", t."setOn" FROM "GerminationTest" t JOIN "Lot" l ON l."id" = t."lotId"`,
            )
            .all()
        : [],
  };
}
