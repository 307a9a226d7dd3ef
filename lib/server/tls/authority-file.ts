import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';

/** The bank's own authority: one file of private key and certificate, so that the two cannot come apart. */
export const authorityFile = (dataDirectory: string): string => path.resolve(dataDirectory, 'tls', 'authority.pem');

/** @returns null where this bank has none; @throws Error for a file that holds no certificate */
export function readAuthority(dataDirectory: string): X509Certificate | null {
  const file = authorityFile(dataDirectory);
  return existsSync(file) ? new X509Certificate(readFileSync(file)) : null;
}

/**
 * SHA-256 of the certificate, as it is compared by eye: 16 groups of four. Phones show the same digits in pairs.
 *
 * @returns '4F2A 91C0 …', hexadecimal
 */
export const fingerprintOf = (certificate: X509Certificate): string =>
  certificate.fingerprint256.replaceAll(':', '').replace(/(.{4})(?=.)/g, '$1 ');

/** 'Hilum on seedroom': the name that stands in a phone's list. */
export const nameOfAuthority = (certificate: X509Certificate): string =>
  /^CN=(.*)$/m.exec(certificate.subject)?.[1] ?? 'Hilum';
