import { X509Certificate } from 'node:crypto';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { broughtCertificate } from '@/lib/server/tls/brought-certificate';
import { namesForPhones } from '@/lib/server/tls/door-certificate';
import { aDoorCertificate, anAuthority } from '@/tests/support/certificates';

const DAY_MS = 86_400_000;
const NOW = new Date('2026-11-25T12:00:00Z');
const directory = mkdtempSync(path.join(tmpdir(), 'hilum-brought-'));
afterAll(() => rmSync(directory, { recursive: true, force: true }));

const authority = anAuthority({ now: NOW, also: ['seeds.example.org'] });
const theirs = aDoorCertificate(authority, ['seeds.example.org', '*.seeds.example.org', '10.0.0.7'], NOW);
const inFile = (name: string, text: string) => {
  const file = path.join(directory, name);
  writeFileSync(file, text);
  return file;
};
const certificateFile = inFile('cert.pem', theirs.certificate + authority.certificate);
const keyFile = inFile('key.pem', theirs.key);
const bring = (question: Partial<Parameters<typeof broughtCertificate>[0]> = {}) =>
  broughtCertificate({ certificateFile, keyFile, names: { asked: [], found: [] }, now: NOW, ...question });

it('takes a certificate with its chain and its key', () => {
  expect(bring()).toEqual([]);
});

describe('refuses, and says what to do', () => {
  it.each<[string, Parameters<typeof bring>[0], RegExp]>([
    ['a certificate without a key', { keyFile: undefined }, /TLS_CERT and TLS_KEY go together/],
    ['a key without a certificate', { certificateFile: undefined }, /TLS_CERT and TLS_KEY go together/],
    [
      'a key of another certificate',
      { keyFile: inFile('other.pem', aDoorCertificate(authority, ['localhost']).key) },
      /is not the one of the certificate/,
    ],
    [
      'a file that is not there',
      { certificateFile: path.join(directory, 'nothing.pem') },
      /TLS_CERT: .*nothing\.pem cannot be read \(ENOENT\)/,
    ],
    ['what is no certificate', { certificateFile: keyFile }, /holds no certificate in PEM form/],
    ['what is no key', { keyFile: inFile('cert-only.pem', theirs.certificate) }, /TLS_KEY: .* holds no private key/],
    ['a certificate that ran out', { now: new Date(NOW.getTime() + 397 * DAY_MS) }, /ran out on 2027-12-26. Renew it/],
    ['one that is not good yet', { now: new Date(NOW.getTime() - 2 * DAY_MS) }, /good only from 2026-11-24.*clock/],
  ])('%s', (_what, question, words) => {
    expect(() => bring(question)).toThrow(words);
  });
});

it('warns two weeks before it runs out', () => {
  expect(bring({ now: new Date(NOW.getTime() + 380 * DAY_MS) })).toEqual([]);
  expect(bring({ now: new Date(NOW.getTime() + 383 * DAY_MS) }).join()).toContain('renew it in time');
});

it('warns when it is not for the address that people use', () => {
  expect(bring({ names: { asked: ['seeds.example.org'], found: ['192.168.1.20'] } })).toEqual([]);
  expect(bring({ names: { asked: ['bank.example.org'], found: [] } }).join()).toContain('not for bank.example.org');
});

it('phones are shown addresses that the certificate is for, what was asked first', () => {
  const certificate = new X509Certificate(theirs.certificate);
  const names = { asked: ['www.seeds.example.org'], found: ['192.168.1.20', '10.0.0.7'] };
  expect(namesForPhones(certificate, names)).toEqual(['www.seeds.example.org', '10.0.0.7', 'seeds.example.org']);
});
