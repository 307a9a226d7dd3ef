import 'server-only';
import { mkdir, readFile, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { readTable, type Table } from '@/lib/domain/spreadsheet/read-table';
import { AppError } from '../app-error';
import { environment } from '../env';

/** Uploaded spreadsheets wait in the data folder until they are imported or given up. Names are made by us. */
const folder = () => path.resolve(environment().DATA_DIR, 'imports');
const fileOf = (importId: string) => {
  if (!/^[0-9a-f-]{36}$/.test(importId)) throw new AppError('not-found', 'This import does not exist.');
  return path.join(folder(), `${importId}.csv`);
};

export async function keepUpload(importId: string, bytes: Uint8Array): Promise<void> {
  await mkdir(folder(), { recursive: true });
  await writeFile(fileOf(importId), bytes);
}

export async function readUpload(importId: string): Promise<Table> {
  let bytes: Uint8Array;
  try {
    bytes = await readFile(fileOf(importId));
  } catch {
    throw new AppError('not-found', 'The uploaded file is no longer here. Choose it again.');
  }
  const table = readTable(bytes);
  if (!table.ok) throw new AppError('refused', table.reason);
  return table;
}

export async function dropUpload(importId: string): Promise<void> {
  await rm(fileOf(importId), { force: true });
}
