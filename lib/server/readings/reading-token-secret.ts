import 'server-only';
import { createHash, randomBytes } from 'node:crypto';

const SECRET_BYTES = 32;
/** Lets people and programs that look for secrets in the wrong place see what it is. */
const PREFIX = 'hilum-readings-';

/** A new token: 256 bits by chance, so that no guessing finds it and a plain SHA-256 keeps it. */
export const newReadingToken = (): string => PREFIX + randomBytes(SECRET_BYTES).toString('base64url');

/** What is stored of a token. */
export const hashReadingToken = (token: string): string => createHash('sha256').update(token).digest('hex');
