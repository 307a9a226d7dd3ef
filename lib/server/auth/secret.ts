import 'server-only';
import { randomBytes } from 'node:crypto';
import { chmodSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { environment } from '../env';

const SECRET_BYTES = 32;

/**
 * The key that signs session cookies: a file 'secret' in the data folder that only its owner may read, made on first
 * need. Deleting it signs everybody out; copying a backup without it does the same.
 *
 * @param dataDirectory  folder of the database
 * @returns 43 characters, base64url
 * @throws Error when the file is there but holds less than a whole secret: better to stop than to sign with little
 * Checked in tests/server/auth/secret.test.ts
 */
export function sessionSecret(dataDirectory: string = environment().DATA_DIR): string {
  const file = path.resolve(dataDirectory, 'secret');
  mkdirSync(path.dirname(file), { recursive: true });
  try {
    // 'wx' fails when the file exists, so that two processes starting together agree on one secret.
    writeFileSync(file, randomBytes(SECRET_BYTES).toString('base64url'), { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  chmodSync(file, 0o600);
  const secret = readFileSync(file, 'utf8').trim();
  if (Buffer.from(secret, 'base64url').length < SECRET_BYTES) {
    throw new Error(`sessionSecret: ${file} is damaged; delete it to have a new one made (everybody signs in again)`);
  }
  return secret;
}
