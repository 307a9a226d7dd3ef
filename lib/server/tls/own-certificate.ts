import type { X509Certificate } from 'node:crypto';
import { existsSync, mkdirSync, renameSync } from 'node:fs';
import { isIP } from 'node:net';
import path from 'node:path';
import { authorityFile } from './authority-file';
import { asOneWrites, namesIn, permittedBy } from './certificate-names';
import { issueAuthority, issueDoorCertificate } from './issue-certificate';
import type { OwnNames } from './own-names';
import { createPemPair, dayOf, goodFrom, goodUntil, type PemPair, readPemPair, replacePemPair } from './pem-pair';
import { liesIn, PRIVATE_DOMAINS, PRIVATE_NETWORKS } from './private-networks';

export interface OwnCertificate {
  /** Private key and certificate of the door, one file. */
  file: string;
  /** What whoever starts Hilum should know. */
  notes: string[];
}

interface Question {
  dataDirectory: string;
  names: OwnNames;
  /** what a new authority is called */
  called: string;
  now: Date;
}

const RENEW_BEFORE_MS = 30 * 86_400_000;
const THIS_COMPUTER = ['localhost', '127.0.0.1', '::1'];
const ALWAYS_PERMITTED = [...PRIVATE_NETWORKS, ...PRIVATE_DOMAINS];

/**
 * The door's certificate from the bank's own authority, both made on first need in the data folder's 'tls', where only
 * the owner may read. The authority is kept as long as it lasts, because every phone has to trust a new one by hand; the
 * door's certificate is renewed without anybody noticing, when it runs out or the computer's addresses change.
 *
 * @throws Error in words when the authority's file is damaged
 * Checked in tests/server/tls/own-certificate.test.ts
 */
export function ownCertificate({ dataDirectory, names, called, now }: Question): OwnCertificate {
  const notes: string[] = [];
  const wanted = [...names.asked, ...names.found];
  const authority = keptAuthority(authorityFile(dataDirectory), { wanted, called, now }, notes);
  const permitted = permittedBy(authority.certificate);
  const covered = wanted.filter((name) => liesIn(name, permitted));
  const missing = names.asked.filter((name) => !covered.includes(name));
  if (missing.length > 0) notes.push(notCovered(missing, dataDirectory));
  const file = path.join(path.dirname(authorityFile(dataDirectory)), 'door.pem');
  const certified = [...new Set([...THIS_COMPUTER, ...covered])];
  if (!isGood(file, certified, authority.certificate, now)) {
    replacePemPair(file, issueDoorCertificate(certified, authority, now));
  }
  return { file, notes };
}

function keptAuthority(
  file: string,
  { wanted, called, now }: { wanted: string[]; called: string; now: Date },
  notes: string[],
): PemPair {
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  if (existsSync(file)) {
    const found = readPemPair(file);
    if (!runsOutSoon(found.certificate, now)) return found;
    const until = dayOf(goodUntil(found.certificate));
    notes.push(
      `The bank's authority runs out (${until}), so a new one was made. Every phone has to trust the new one.`,
    );
    renameSync(file, `${file}.until-${until}`);
  }
  createPemPair(file, issueAuthority(called, [...ALWAYS_PERMITTED, ...ownPermissions(wanted)], now));
  return readPemPair(file);
}

/** Names of its own a bank's authority may speak for. Without a dot a name would be a whole top-level domain: 'garden'. */
const ownPermissions = (wanted: string[]): string[] =>
  wanted
    .filter((name) => !liesIn(name, ALWAYS_PERMITTED) && !isBare(name))
    .map((name) => ({ 0: name, 4: `${name}/32`, 6: `${name}/128` })[isIP(name)] ?? name);

const isBare = (name: string) => isIP(name) === 0 && !name.includes('.');

function notCovered(missing: string[], dataDirectory: string): string {
  const bare = missing.find(isBare);
  if (bare !== undefined) {
    return `The bank's own authority cannot speak for '${bare}': a name without a dot might be the end of many sites' names. Use '${bare}.local' or an address, or bring a certificate (TLS_CERT, TLS_KEY).`;
  }
  return (
    `The bank's own authority was not made for ${missing.join(', ')}, so phones will not trust Hilum there; its other addresses work as before. ` +
    `To have a new authority: stop Hilum, remove the folder ${path.dirname(authorityFile(dataDirectory))}, start again. Every phone then has to trust the new one.`
  );
}

/** A damaged one is not good: it is made again without anybody noticing. */
function isGood(file: string, names: string[], authority: X509Certificate, now: Date): boolean {
  try {
    const { certificate } = readPemPair(file);
    return (
      certificate.verify(authority.publicKey) &&
      goodFrom(certificate) <= now &&
      !runsOutSoon(certificate, now) &&
      namesIn(certificate).sort().join() === names.map(asOneWrites).sort().join()
    );
  } catch {
    return false;
  }
}

const runsOutSoon = (certificate: X509Certificate, now: Date) =>
  goodUntil(certificate).getTime() - now.getTime() < RENEW_BEFORE_MS;
