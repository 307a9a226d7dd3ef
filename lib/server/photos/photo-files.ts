import 'server-only';
import { mkdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { isUuidV7 } from '@/lib/domain/ids/uuid-v7';
import { environment } from '../env';
import { newId } from '../new-id';

const folder = () => path.resolve(environment().DATA_DIR, 'photos');

/** Only ids of ours become names of files. */
function fileOf(id: string): string {
  if (!isUuidV7(id)) throw new RangeError(`fileOf: id must be a UUID of version 7, got ${id}`);
  return path.join(folder(), `${id}.webp`);
}

/** Written whole or not at all. A file without its row harms nobody. */
export async function keepPhoto(id: string, bytes: Uint8Array): Promise<void> {
  await mkdir(folder(), { recursive: true });
  const half = path.join(folder(), `${newId()}.part`);
  try {
    await writeFile(half, bytes, { flush: true });
    await rename(half, fileOf(id));
  } catch (error) {
    await rm(half, { force: true });
    throw error;
  }
}

/** @returns null when there is no such file */
export async function readPhoto(id: string): Promise<Buffer<ArrayBuffer> | null> {
  try {
    return await readFile(fileOf(id));
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw error;
  }
}
