import { createPrivateKey, type KeyObject, X509Certificate } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { isIP } from 'node:net';
import { namesIn } from './certificate-names';
import type { OwnNames } from './own-names';
import { dayOf, goodFrom, goodUntil } from './pem-pair';

interface Question {
  /** TLS_CERT: PEM, the server's certificate first, then what leads to its authority */
  certificateFile: string | undefined;
  /** TLS_KEY: PEM */
  keyFile: string | undefined;
  names: OwnNames;
  now: Date;
}

const SOON_MS = 14 * 86_400_000;

/**
 * The certificate that the steward brought. It is used where it lies and read again every few hours, so that whatever
 * renews it need not know of Hilum.
 *
 * @returns what whoever starts Hilum should know
 * @throws Error in words when it cannot be used
 * Checked in tests/server/tls/brought-certificate.test.ts
 */
export function broughtCertificate({ certificateFile, keyFile, names, now }: Question): string[] {
  if (!certificateFile || !keyFile) {
    throw new Error('TLS_CERT and TLS_KEY go together: set both, or neither to have Hilum make a certificate.');
  }
  const certificate = certificateIn(certificateFile);
  if (!certificate.checkPrivateKey(keyIn(keyFile))) {
    throw new Error(`The key in ${keyFile} is not the one of the certificate in ${certificateFile}.`);
  }
  const from = goodFrom(certificate);
  const to = goodUntil(certificate);
  if (to <= now) throw new Error(`The certificate in ${certificateFile} ran out on ${dayOf(to)}. Renew it.`);
  if (from > now) {
    throw new Error(
      `The certificate in ${certificateFile} is good only from ${dayOf(from)}. Is this computer's clock right?`,
    );
  }
  const notes: string[] = [];
  if (to.getTime() - now.getTime() < SOON_MS) notes.push(`The certificate runs out on ${dayOf(to)}: renew it in time.`);
  const missing = names.asked.filter((name) => !isFor(certificate, name));
  if (missing.length > 0) {
    notes.push(
      `The certificate is not for ${missing.join(', ')} but for ${namesIn(certificate).join(', ')}: phones will refuse the others.`,
    );
  }
  return notes;
}

export const isFor = (certificate: X509Certificate, name: string): boolean =>
  (isIP(name) === 0 ? certificate.checkHost(name, { subject: 'never' }) : certificate.checkIP(name)) !== undefined;

function certificateIn(file: string): X509Certificate {
  const text = textOf(file, 'TLS_CERT');
  try {
    return new X509Certificate(text);
  } catch {
    throw new Error(`TLS_CERT: ${file} holds no certificate in PEM form (it begins with -----BEGIN CERTIFICATE-----).`);
  }
}

function keyIn(file: string): KeyObject {
  const text = textOf(file, 'TLS_KEY');
  try {
    return createPrivateKey(text);
  } catch {
    throw new Error(`TLS_KEY: ${file} holds no private key in PEM form without a password.`);
  }
}

function textOf(file: string, variable: string): string {
  try {
    return readFileSync(file, 'utf8');
  } catch (error) {
    throw new Error(`${variable}: ${file} cannot be read (${(error as NodeJS.ErrnoException).code}).`);
  }
}
