import 'server-only';
import { fileBlockers } from '@/lib/domain/logger/file-blockers';
import type { GuessedLayout } from '@/lib/domain/logger/guess-logger';
import { type ThinStretch, thinReadings } from '@/lib/domain/logger/thin-readings';
import {
  layoutFromAddress,
  type ReadingReport,
  readingReportSchema,
  storedLayoutSchema,
} from '@/lib/schemas/reading-import';
import { AppError } from '../app-error';
import { progressKey } from '../commands/import-readings';
import { connections, reader } from '../database/connections';
import { type ImportProgress, progressOf } from '../import/import-progress';
import { compareWithStored } from '../readings/compare-with-stored';
import { loggerFile } from '../readings/logger-files';
import { giveWay, guessLoggerFile, readLoggerFile } from '../readings/read-logger-file';
import { reportOf } from '../readings/report-of';

export interface ReadingImportRow {
  id: number;
  kind: string;
  /** of the file, or of the token whose script sent the readings */
  name: string;
  status: string;
  rows: number;
  added: number;
  createdAt: Date;
  finishedAt: Date | null;
}

const LATEST_SHOWN = 50;
const STRETCHES_DRAWN = 240;
const FIRST_SHOWN = 6;

const ROW = {
  id: true,
  kind: true,
  fileName: true,
  status: true,
  rows: true,
  added: true,
  createdAt: true,
  finishedAt: true,
  token: { select: { name: true } },
} as const;

/** The imports of a store, latest first. */
export async function findReadingImports(storeId: string): Promise<ReadingImportRow[]> {
  const rows = await reader().readingImport.findMany({
    where: { storeId },
    orderBy: { id: 'desc' },
    take: LATEST_SHOWN,
    select: ROW,
  });
  return rows.map(({ token, fileName, ...row }) => ({ ...row, name: fileName ?? token?.name ?? 'script' }));
}

/** An import of a store with what was found in it; null when the store has no such import. */
export async function getReadingImport(storeId: string, id: number) {
  if (!Number.isSafeInteger(id)) return null;
  const row = await reader().readingImport.findFirst({
    where: { id, storeId },
    select: { ...ROW, storeId: true, uploadId: true, fileHash: true, layout: true, report: true },
  });
  if (!row) return null;
  const { token, fileName, report, ...rest } = row;
  return {
    ...rest,
    name: fileName ?? token?.name ?? 'script',
    report: report === null ? null : readingReportSchema.parse(JSON.parse(report)),
  };
}
export type ReadingImportDetail = NonNullable<Awaited<ReturnType<typeof getReadingImport>>>;

export interface ReadingPreview {
  layout: GuessedLayout;
  headings: string[];
  opening: { line: number; text: string }[];
  notes: string[];
  /** why it cannot be imported as it is read now */
  blockers: string[];
  report: ReadingReport;
  first: { line: number; at: number; temperatureC: number; relativeHumidity: number | null }[];
  temperature: ThinStretch[];
  humidity: ThinStretch[];
  /** when the same file was imported before */
  importedBefore: Date | null;
}

/** A waiting file as it would be read with the guessed layout and what the address says otherwise. */
export async function previewReadings(
  file: ReadingImportDetail,
  address: Record<string, string | string[] | undefined>,
): Promise<ReadingPreview> {
  const bytes = await loggerFile(file.uploadId);
  const guess = await guessLoggerFile(bytes);
  if (!guess.ok) throw new AppError('refused', guess.reason);
  const chosen = layoutFromAddress(address);
  const zone = guess.layout.zone ?? (await zoneOfLastFile(file.storeId));
  const layout: GuessedLayout = { ...guess.layout, zone, ...chosen };
  const contents = await readLoggerFile(bytes, {
    ...layout,
    dateOrder: layout.dateOrder ?? 'day-month-year',
    zone: layout.zone ?? 'UTC',
  });
  const { readings, rows, problems } = contents;
  const { isNew: _, ...there } = await compareWithStored(connections().rows, file.storeId, readings, giveWay);
  const added = readings.atEpochSeconds.length - there.alreadyThere;
  const open = [
    ...(layout.dateOrder === null
      ? ['Choose whether the day or the month stands first, then read the file again.']
      : []),
    ...(layout.zone === null ? ["Choose the time zone of the logger's clock, then read the file again."] : []),
  ];
  return {
    layout,
    headings: guess.headings,
    opening: guess.opening,
    // What was chosen by hand is no longer supposed.
    notes: Object.keys(chosen).length > 0 ? [] : guess.notes,
    blockers: open.length > 0 ? open : fileBlockers(rows, readings.atEpochSeconds.length, problems),
    report: reportOf(contents, { added, ...there }),
    first: Array.from({ length: Math.min(FIRST_SHOWN, readings.lines.length) }, (_, index) => {
      const humidity = readings.relativeHumidity[index] as number;
      return {
        line: readings.lines[index] as number,
        at: readings.atEpochSeconds[index] as number,
        temperatureC: readings.temperatureC[index] as number,
        relativeHumidity: Number.isNaN(humidity) ? null : humidity,
      };
    }),
    temperature: thinReadings(readings.atEpochSeconds, readings.temperatureC, STRETCHES_DRAWN),
    humidity: thinReadings(readings.atEpochSeconds, readings.relativeHumidity, STRETCHES_DRAWN),
    importedBefore: await sameFileBefore(file),
  };
}

async function zoneOfLastFile(storeId: string): Promise<string | null> {
  const last = await reader().readingImport.findFirst({
    where: { storeId, status: 'imported', layout: { not: null } },
    orderBy: { id: 'desc' },
    select: { layout: true },
  });
  const layout = storedLayoutSchema.safeParse(JSON.parse(last?.layout ?? 'null'));
  return layout.success && layout.data.zone !== 'file' ? layout.data.zone : null;
}

async function sameFileBefore({ storeId, fileHash }: ReadingImportDetail): Promise<Date | null> {
  if (fileHash === null) return null;
  const before = await reader().readingImport.findFirst({
    where: { storeId, fileHash, status: 'imported' },
    select: { finishedAt: true },
  });
  return before?.finishedAt ?? null;
}

/** How far an import of readings is: running with figures, or its status in the database. */
export async function getReadingImportState(id: number): Promise<{ status: string; progress: ImportProgress | null }> {
  const progress = progressOf(progressKey(id));
  if (progress) return { status: 'running', progress };
  const row = Number.isSafeInteger(id)
    ? await reader().readingImport.findUnique({ where: { id }, select: { status: true } })
    : null;
  return { status: row?.status ?? 'missing', progress: null };
}

export interface ReadingTokenRow {
  id: string;
  name: string;
  createdAt: Date;
  lastUsedAt: Date | null;
  revokedAt: Date | null;
}

/** Tokens of a store, those that work first. */
export async function findReadingTokens(storeId: string): Promise<ReadingTokenRow[]> {
  const rows = await reader().readingToken.findMany({
    where: { storeId },
    orderBy: { createdAt: 'desc' },
    select: { id: true, name: true, createdAt: true, lastUsedAt: true, revokedAt: true },
  });
  return rows.sort((a, b) => Number(a.revokedAt !== null) - Number(b.revokedAt !== null));
}
