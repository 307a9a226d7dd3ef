import 'server-only';
import type { ColumnMapping } from '@/lib/domain/spreadsheet/guess-columns';
import type { Table } from '@/lib/domain/spreadsheet/read-table';
import { checkRows } from '@/lib/schemas/import/dry-run';
import { IMPORT_KINDS, type ImportKind } from '@/lib/schemas/import/fields';
import { runImportSchema } from '@/lib/schemas/import/import-request';
import type { AccessionRecord, GerminationTestRecord, LotRecord } from '@/lib/schemas/import/records';
import { AppError } from '../app-error';
import type { Person } from '../auth/roles';
import { inBulkTransaction, markForJudgingInBulk } from '../database/bulk-transaction';
import { connections } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';
import { type BulkWriter, createBulkWriter } from '../import/bulk-writer';
import { dropUpload, readUpload } from '../import/import-files';
import { endProgress, reportProgress } from '../import/import-progress';
import { loadImportContext } from '../import/load-import-context';
import { accessionWriter } from '../import/write-accessions';
import { germinationTestWriter } from '../import/write-germination-tests';
import { lotWriter } from '../import/write-lots';
import { writeNewCrop, writeNewStore } from '../import/write-new-names';
import { judgeLots } from '../judging/judge-lots';
import { today } from '../today';
import { type Command, invalidInput, requireRole } from './command';

/** Rows written before the server looks after other visitors again. */
const ROWS_AT_A_TIME = 250;

interface ImportOutcome {
  importId: string;
  rows: number;
}

/**
 * Imports a checked spreadsheet: all of it or nothing, in one transaction that other visitors do not see until it is whole.
 * The rows are checked again here, because the collection may have changed since the dry run.
 *
 * Not made by `defineCommand`: thousands of rows go through plain prepared statements (sixty times faster), inside the
 * same write queue.
 */
async function execute(person: Person | null, input: unknown): Promise<ImportOutcome> {
  const actor = requireRole(person, 'steward');
  const parsed = runImportSchema.safeParse(input);
  if (!parsed.success) throw invalidInput(parsed.error);
  const { importId, columns, createNames } = parsed.data;
  const table = await readUpload(importId);
  try {
    const outcome = await enqueueWrite(() => importTable(actor, importId, table, columns, createNames === 'on'));
    await dropUpload(importId);
    return outcome;
  } catch (error) {
    throw explainFailure(error) ?? error;
  } finally {
    endProgress(importId);
  }
}

export const runImport: Command<ImportOutcome> = Object.assign(execute, {
  commandName: 'run-import',
  role: 'steward' as const,
});

async function importTable(
  person: Person,
  importId: string,
  table: Table,
  columns: ColumnMapping,
  createNames: boolean,
): Promise<ImportOutcome> {
  const { bulk } = connections();
  const day = today();
  reportProgress(importId, { phase: 'checking', done: 0, total: table.rows.length });
  await giveWay();
  const { rows, lotIds } = await inBulkTransaction(async () => {
    const kind = startJob(importId);
    const dryRun = checkRows(kind, table, columns, loadImportContext(bulk, kind, day));
    if (dryRun.problems.length > 0) {
      throw new AppError(
        'refused',
        `Nothing was imported: ${dryRun.problems.length} problems are left. They are listed below.`,
      );
    }
    const newNames = [...dryRun.newCrops, ...dryRun.newStores];
    if (newNames.length > 0 && !createNames) {
      throw new AppError(
        'refused',
        `Nothing was imported: tick the box to create ${newNames.join(', ')}, or correct these names in the file.`,
      );
    }
    const writer = createBulkWriter(bulk, person, importId, day);
    for (const name of dryRun.newCrops) writeNewCrop(writer, name);
    for (const name of dryRun.newStores) writeNewStore(writer, name);
    const written = { rows: dryRun.records.length, lotIds: await writeRecords(writer, kind, dryRun.records) };
    finishJob(writer, kind, written.rows);
    markForJudgingInBulk(bulk, written.lotIds);
    return written;
  });
  if (lotIds.length > 0) {
    const touched = [...new Set(lotIds)];
    await judgeLots(bulk, touched, day, (done) =>
      reportProgress(importId, { phase: 'judging', done, total: touched.length }),
    );
  }
  return { importId, rows };
}

function startJob(importId: string): ImportKind {
  const job = connections()
    .bulk.prepare<[string], { kind: string; status: string }>(`SELECT "kind", "status" FROM "ImportJob" WHERE "id" = ?`)
    .get(importId);
  const kind = IMPORT_KINDS.find((known) => known === job?.kind);
  if (!job || !kind) throw new AppError('not-found', 'This import does not exist. Choose the file again.');
  if (job.status === 'imported')
    throw new AppError('refused', 'This file has been imported already. Nothing was imported twice.');
  return kind;
}

async function writeRecords(
  writer: BulkWriter,
  kind: ImportKind,
  records: readonly (AccessionRecord | LotRecord | GerminationTestRecord)[],
): Promise<string[]> {
  const writers = {
    accessions: accessionWriter,
    lots: lotWriter,
    'germination tests': germinationTestWriter,
  };
  const write = writers[kind](writer) as (record: (typeof records)[number]) => string[];
  const lotIds: string[] = [];
  for (const [index, record] of records.entries()) {
    lotIds.push(...write(record));
    if (index % ROWS_AT_A_TIME === ROWS_AT_A_TIME - 1) {
      reportProgress(writer.importId, { phase: 'writing', done: index + 1, total: records.length });
      await giveWay();
    }
  }
  return lotIds;
}

function finishJob(writer: BulkWriter, kind: ImportKind, rows: number): void {
  writer.database
    .prepare(`UPDATE "ImportJob" SET "status" = 'imported', "rows" = ?, "finishedAt" = ? WHERE "id" = ?`)
    .run(rows, writer.now, writer.importId);
  writer.audit('import', writer.importId, `Imported ${rows} ${kind}`);
}

const giveWay = () => new Promise<void>((resolve) => setImmediate(resolve));
