import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto';
import { chmodSync, readFileSync, renameSync, writeFileSync } from 'node:fs';

/** A certificate and its private key, both as PEM. */
export interface Issued {
  certificate: string;
  key: string;
}

export interface PemPair {
  certificate: X509Certificate;
  key: KeyObject;
}

/** @throws Error in words when the file does not hold a private key and the certificate that belongs to it */
export function readPemPair(file: string): PemPair {
  try {
    chmodSync(file, 0o600);
    const text = readFileSync(file);
    const pair = { certificate: new X509Certificate(text), key: createPrivateKey(text) };
    if (!pair.certificate.checkPrivateKey(pair.key)) throw new Error('its key belongs to another certificate');
    return pair;
  } catch (error) {
    throw new Error(
      `${file} is damaged: ${(error as Error).message}. Put it back from a backup, or remove it to have a new one made.`,
    );
  }
}

/** Only its owner may read it. Where there is one already, that one stays: two processes starting together agree. */
export function createPemPair(file: string, { key, certificate }: Issued): void {
  try {
    writeFileSync(file, `${key}${certificate}`, { flag: 'wx', mode: 0o600 });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
}

/** Whole or not at all. */
export function replacePemPair(file: string, { key, certificate }: Issued): void {
  const beside = `${file}.${process.pid}`;
  writeFileSync(beside, `${key}${certificate}`, { mode: 0o600 });
  renameSync(beside, file);
}

/** Node 20 knows the dates of a certificate as text only. */
export const goodFrom = (certificate: X509Certificate): Date => new Date(certificate.validFrom);
export const goodUntil = (certificate: X509Certificate): Date => new Date(certificate.validTo);
export const dayOf = (date: Date): string => date.toISOString().slice(0, 10);
