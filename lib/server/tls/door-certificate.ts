import { X509Certificate } from 'node:crypto';
import { existsSync, readFileSync } from 'node:fs';
import { hostname, networkInterfaces } from 'node:os';
import path from 'node:path';
import { environment } from '../env';
import { authorityFile } from './authority-file';
import { broughtCertificate, isFor } from './brought-certificate';
import { namesIn } from './certificate-names';
import { ownCertificate } from './own-certificate';
import { type OwnNames, ownNames } from './own-names';

export interface DoorCertificate {
  certificateFile: string;
  keyFile: string;
  /** What whoever starts Hilum should know. */
  notes: string[];
}

/**
 * The certificate with which the door opens now: the one that the steward brought, or one from the bank's own authority.
 *
 * @throws Error in words when there is none that phones could trust
 */
export function openDoorCertificate(now: Date): DoorCertificate {
  const { TLS_CERT, TLS_KEY, DATA_DIR } = environment();
  const names = namesNow();
  if (hasBroughtCertificate()) {
    const notes = broughtCertificate({ certificateFile: TLS_CERT, keyFile: TLS_KEY, names, now });
    return { certificateFile: TLS_CERT ?? '', keyFile: TLS_KEY ?? '', notes };
  }
  const called = `Hilum on ${hostname().split('.')[0] || 'this computer'}`;
  const { file, notes } = ownCertificate({ dataDirectory: DATA_DIR, names, called, now });
  return { certificateFile: file, keyFile: file, notes };
}

export const hasBroughtCertificate = (): boolean =>
  environment().TLS_CERT !== undefined || environment().TLS_KEY !== undefined;

/**
 * Addresses at which phones find this bank with a certificate they can trust, the likeliest first.
 *
 * @param port  of the TLS door
 * Checked in tests/server/tls/brought-certificate.test.ts
 */
export function phoneAddresses(port: number): string[] {
  const certificate = certificateShown();
  if (!certificate) return [];
  const publicAddress = environment().HILUM_ADDRESS;
  return namesForPhones(certificate, namesNow()).map((name) =>
    publicAddress !== undefined && new URL(publicAddress).hostname === name
      ? new URL(publicAddress).origin
      : httpsAddress(name, port),
  );
}

/** Names that are asked for or found and certified; then what else a brought certificate is for. */
export function namesForPhones(certificate: X509Certificate, { asked, found }: OwnNames): string[] {
  const known = [...asked, ...found].filter((name) => isFor(certificate, name));
  const further = namesIn(certificate).filter((name) => !name.includes('*') && !known.includes(name));
  return [...known, ...further].filter((name) => !['localhost', '127.0.0.1', '::1'].includes(name));
}

function certificateShown(): X509Certificate | null {
  const { TLS_CERT, DATA_DIR } = environment();
  const file = TLS_CERT ?? path.join(path.dirname(authorityFile(DATA_DIR)), 'door.pem');
  // Read where Hilum runs: without these marks the build takes the whole project folder with it, the collection too.
  return existsSync(/* turbopackIgnore: true */ file)
    ? new X509Certificate(readFileSync(/* turbopackIgnore: true */ file))
    : null;
}

const httpsAddress = (name: string, port: number) =>
  `https://${name.includes(':') ? `[${name}]` : name}${port === 443 ? '' : `:${port}`}`;

function namesNow(): OwnNames {
  const { HOST, HILUM_ADDRESS } = environment();
  return ownNames({
    host: HOST,
    publicAddress: HILUM_ADDRESS,
    hostname: hostname(),
    interfaces: networkInterfaces(),
  });
}
