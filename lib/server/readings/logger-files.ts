import 'server-only';
import { mkdir, readdir, readFile, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { AppError } from '../app-error';
import { environment } from '../env';

/** Logger files wait in the data folder until they are imported or a week has passed. Names are made by us. */
const folder = () => path.resolve(environment().DATA_DIR, 'logger-files');
const WAITS_MS = 7 * 86_400_000;

function fileOf(uploadId: string): string {
  if (!/^[0-9a-f-]{36}$/.test(uploadId)) throw new AppError('not-found', 'This file does not exist.');
  return path.join(folder(), `${uploadId}.txt`);
}

export async function keepLoggerFile(uploadId: string, bytes: Uint8Array): Promise<void> {
  await mkdir(folder(), { recursive: true });
  await dropForgotten();
  await writeFile(fileOf(uploadId), bytes);
}

export async function loggerFile(uploadId: string | null): Promise<Uint8Array> {
  try {
    return await readFile(fileOf(uploadId ?? ''));
  } catch {
    throw new AppError('not-found', 'The uploaded file is no longer here. Choose it again.');
  }
}

export async function dropLoggerFile(uploadId: string): Promise<void> {
  await rm(fileOf(uploadId), { force: true });
}

async function dropForgotten(): Promise<void> {
  for (const name of await readdir(folder())) {
    const file = path.join(folder(), name);
    const { mtimeMs } = await stat(file);
    if (Date.now() - mtimeMs > WAITS_MS) await rm(file, { force: true });
  }
}
