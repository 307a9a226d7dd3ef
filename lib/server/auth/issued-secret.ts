import 'server-only';
import { createHash, randomBytes } from 'node:crypto';

const SECRET_BYTES = 32;

/**
 * A new secret to be given out once: 256 bits by chance, so that no guessing finds it and a plain SHA-256 keeps it.
 *
 * @param prefix  lets people and programs that look for secrets in the wrong place see what it is
 */
export const newIssuedSecret = (prefix = ''): string => prefix + randomBytes(SECRET_BYTES).toString('base64url');

/** What is stored of a secret. */
export const hashIssuedSecret = (secret: string): string => createHash('sha256').update(secret).digest('hex');
