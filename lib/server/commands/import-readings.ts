import 'server-only';
import type Database from 'better-sqlite3';
import { fileBlockers } from '@/lib/domain/logger/file-blockers';
import type { LoggerLayout } from '@/lib/domain/logger/logger-layout';
import type { LoggerContents } from '@/lib/domain/logger/read-logger';
import { importReadingsSchema } from '@/lib/schemas/reading-import';
import { AppError } from '../app-error';
import type { Person } from '../auth/roles';
import { auditInBulk, inBulkTransaction, markForJudgingInBulk } from '../database/bulk-transaction';
import { connections, reader } from '../database/connections';
import { explainFailure } from '../database/explain-failure';
import { enqueueWrite } from '../database/write-queue';
import { endProgress, reportProgress } from '../import/import-progress';
import { judgeLots } from '../judging/judge-lots';
import { type AddedReadings, addReadings } from '../readings/add-readings';
import { dropLoggerFile, loggerFile } from '../readings/logger-files';
import { giveWay, readLoggerFile } from '../readings/read-logger-file';
import { reportOf } from '../readings/report-of';
import { lotsEverIn } from '../stores/lots-in-store';
import { today } from '../today';
import { type Command, invalidInput, requireRole } from './command';

interface ImportedReadings extends AddedReadings {
  importId: number;
  storeId: string;
}

interface WaitingFile {
  id: number;
  storeId: string;
  storeName: string;
  uploadId: string | null;
  fileName: string | null;
  status: string;
}

/** Under which a running import of readings is found by who asks how far it is. */
export const progressKey = (importId: number) => `readings ${importId}`;

/**
 * Imports a logger's file with the layout that was confirmed: all its readings for instants that the store lacks, in one
 * transaction that nobody sees until it is whole. The same file again, or one that overlaps, adds only what is new.
 *
 * Not made by `defineCommand`, as run-import is not: half a million rows go through prepared statements. The file is read
 * before the write queue is entered, so that other writes wait for the writing alone.
 */
async function execute(person: Person | null, input: unknown): Promise<ImportedReadings> {
  const actor = requireRole(person, 'volunteer');
  const parsed = importReadingsSchema.safeParse(input);
  if (!parsed.success) throw invalidInput(parsed.error);
  const { importId, ...layout } = parsed.data;
  try {
    const file = waitingFile(connections().rows, importId);
    const contents = await readWaitingFile(file, layout);
    const outcome = await enqueueWrite(() => importContents(actor, file, layout, contents));
    if (file.uploadId) await dropLoggerFile(file.uploadId);
    return { importId, storeId: file.storeId, ...outcome };
  } catch (error) {
    throw explainFailure(error) ?? error;
  } finally {
    endProgress(progressKey(importId));
  }
}

export const importReadings: Command<ImportedReadings> = Object.assign(execute, {
  commandName: 'import-readings',
  role: 'volunteer' as const,
});

function waitingFile(database: Database.Database, importId: number): WaitingFile {
  const file = database
    .prepare<[number], WaitingFile>(
      `SELECT i."id", i."storeId", s."name" AS "storeName", i."uploadId", i."fileName", i."status"
       FROM "ReadingImport" i JOIN "Store" s ON s."id" = i."storeId" WHERE i."id" = ? AND i."kind" = 'file'`,
    )
    .get(importId);
  if (!file) throw new AppError('not-found', 'This file does not exist. Choose it again.');
  if (file.status !== 'uploaded') {
    throw new AppError('refused', 'This file has been imported already. Nothing was imported twice.');
  }
  return file;
}

async function readWaitingFile(file: WaitingFile, layout: LoggerLayout): Promise<LoggerContents> {
  const bytes = await loggerFile(file.uploadId);
  const contents = await readLoggerFile(bytes, layout, (done) =>
    reportProgress(progressKey(file.id), { phase: 'checking', done, total: bytes.length }),
  );
  const blockers = fileBlockers(contents.rows, contents.readings.atEpochSeconds.length, contents.problems);
  if (blockers.length > 0) throw new AppError('refused', `Nothing was imported. ${blockers.join(' ')}`);
  return contents;
}

async function importContents(
  person: Person,
  { id, storeId, storeName, fileName }: WaitingFile,
  layout: LoggerLayout,
  contents: LoggerContents,
): Promise<AddedReadings> {
  let lots: string[] = [];
  const total = contents.readings.atEpochSeconds.length;
  const outcome = await inBulkTransaction(async (bulk) => {
    // Two who press the button at once: the second comes here when the first is through.
    waitingFile(bulk, id);
    // Now that no other program can write: a packet that it put here while this one waited belongs to them.
    lots = await lotsEverIn(reader(), storeId);
    const added = await addReadings(bulk, storeId, id, contents.readings, {
      giveWay,
      onProgress: (done) => reportProgress(progressKey(id), { phase: 'writing', done, total }),
    });
    bulk
      .prepare(
        `UPDATE "ReadingImport" SET "status" = 'imported', "uploadId" = NULL, "layout" = ?, "rows" = ?, "added" = ?,
           "report" = ?, "finishedAt" = ? WHERE "id" = ?`,
      )
      .run(
        JSON.stringify(layout),
        contents.rows,
        added.added,
        JSON.stringify(reportOf(contents, added)),
        new Date().toISOString(),
        id,
      );
    auditInBulk(bulk, person, 'import-readings', {
      entity: 'store',
      entityId: storeId,
      summary:
        added.added > 0
          ? `Imported ${added.added} readings of store ${storeName} from ${fileName}`
          : `Imported ${fileName} for store ${storeName}: all its readings were there already`,
      after: { importId: id, ...added },
    });
    if (added.added > 0) markForJudgingInBulk(bulk, lots);
    return added;
  });
  if (outcome.added > 0 && lots.length > 0) {
    await judgeLots(connections().bulk, lots, today(), (done) =>
      reportProgress(progressKey(id), { phase: 'judging', done, total: lots.length }),
    );
  }
  return outcome;
}
