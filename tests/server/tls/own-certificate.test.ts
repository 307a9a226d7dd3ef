import { X509Certificate } from 'node:crypto';
import { chmodSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readAuthority } from '@/lib/server/tls/authority-file';
import { namesIn } from '@/lib/server/tls/certificate-names';
import { ownCertificate } from '@/lib/server/tls/own-certificate';
import { createPemPair, readPemPair, replacePemPair } from '@/lib/server/tls/pem-pair';
import { anAuthority } from '@/tests/support/certificates';

const DAY_MS = 86_400_000;
const START = new Date('2026-11-25T12:00:00Z');
const daysLater = (days: number) => new Date(START.getTime() + days * DAY_MS);

let dataDirectory: string;
beforeEach(() => {
  dataDirectory = mkdtempSync(path.join(tmpdir(), 'hilum-tls-'));
});
afterEach(() => rmSync(dataDirectory, { recursive: true, force: true }));

const folder = () => path.join(dataDirectory, 'tls');

function start({ asked = [] as string[], found = ['192.168.1.20', 'seedroom.local'], now = START } = {}) {
  const { file, notes } = ownCertificate({ dataDirectory, names: { asked, found }, called: 'Hilum on seedroom', now });
  const door = new X509Certificate(readFileSync(file));
  const authority = readAuthority(dataDirectory) as X509Certificate;
  expect(door.verify(authority.publicKey), 'the door’s certificate is of the authority kept').toBe(true);
  return { door: door.fingerprint256, authority: authority.fingerprint256, names: namesIn(door), notes, file };
}

it('makes authority and door on first start, for this computer and where phones find it', () => {
  expect(start()).toMatchObject({
    names: ['localhost', '127.0.0.1', '::1', '192.168.1.20', 'seedroom.local'],
    notes: [],
  });
});

it('keeps both at the next start', () => {
  const first = start();
  expect(start({ now: daysLater(300) })).toEqual(first);
});

it('lets only the owner read the keys, also where they were left open', () => {
  const { file } = start();
  const authorityFile = path.join(folder(), 'authority.pem');
  const mode = (of: string) => statSync(of).mode & 0o777;
  expect([mode(folder()), mode(file), mode(authorityFile)]).toEqual([0o700, 0o600, 0o600]);
  chmodSync(file, 0o644);
  chmodSync(authorityFile, 0o644);
  start();
  expect([mode(file), mode(authorityFile)]).toEqual([0o600, 0o600]);
  expect(readdirSync(folder()).sort()).toEqual(['authority.pem', 'door.pem']);
});

it('no key can be read by others even for a moment, and one that is there already stays', () => {
  const file = path.join(dataDirectory, 'pair.pem');
  const [one, other] = [anAuthority(), anAuthority()];
  createPemPair(file, one);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  createPemPair(file, other);
  expect(readFileSync(file, 'utf8')).toBe(one.key + one.certificate);
  replacePemPair(file, other);
  expect(statSync(file).mode & 0o777).toBe(0o600);
  expect(readFileSync(file, 'utf8')).toBe(other.key + other.certificate);
});

describe('renews the door and keeps the authority', () => {
  it.each([
    ['an address changed', { found: ['192.168.1.21', 'seedroom.local'] }],
    ['an address came', { found: ['192.168.1.20', '10.0.0.9', 'seedroom.local'] }],
    ['it runs out within thirty days', { now: daysLater(366) }],
    ['this computer’s clock was wrong when it was made', { now: daysLater(-3) }],
  ])('when %s', (_when, changed) => {
    const first = start();
    const second = start(changed);
    expect(second.door).not.toBe(first.door);
    expect(second.authority).toBe(first.authority);
    expect(second.notes).toEqual([]);
  });

  it('but not a day before thirty days, nor for the order of addresses', () => {
    const first = start({ found: ['192.168.1.20', 'FD00:0::7', 'seedroom.local'] });
    expect(start({ found: ['seedroom.local', 'fd00::7', '192.168.1.20'], now: daysLater(365) }).door).toBe(first.door);
  });

  it('when its file is damaged', () => {
    const first = start();
    writeFileSync(first.file, readFileSync(first.file, 'utf8').slice(0, 400));
    const second = start();
    expect(second.authority).toBe(first.authority);
    expect(readPemPair(second.file).certificate.fingerprint256).toBe(second.door);
  });
});

it('makes a new authority when the old one runs out, keeps the old file, and says that phones must trust anew', () => {
  const first = start();
  const almost = daysLater(3653 - 31);
  expect(start({ now: almost }).authority).toBe(first.authority);
  const second = start({ now: daysLater(3653 - 29) });
  expect(second.authority).not.toBe(first.authority);
  expect(second.notes.join()).toContain('Every phone has to trust the new one');
  expect(readdirSync(folder())).toContain('authority.pem.until-2036-11-25');
});

it('does not start on a damaged authority: phones trust it, so it is not replaced unasked', () => {
  start();
  writeFileSync(path.join(folder(), 'authority.pem'), 'nothing');
  expect(() => start()).toThrow(/authority\.pem is damaged.*Put it back from a backup, or remove it/);
});

it('does not start on an authority whose key is another’s', () => {
  const { file } = start();
  const key = readFileSync(file, 'utf8').split('-----BEGIN CERT')[0];
  writeFileSync(path.join(folder(), 'authority.pem'), `${key}${readAuthority(dataDirectory)}`);
  expect(() => start()).toThrow(/its key belongs to another certificate/);
});

describe('names outside the house', () => {
  it('are covered when they are asked for at the first start', () => {
    const { names, notes } = start({ asked: ['seeds.example.org', '198.51.100.7', '2001:db8::7'] });
    expect(names).toEqual(expect.arrayContaining(['seeds.example.org', '198.51.100.7', '2001:db8::7']));
    expect(notes).toEqual([]);
  });

  it('that come later are left out and said, and what phones trust already stays', () => {
    const first = start();
    const { authority, door, names, notes } = start({ asked: ['seeds.example.org'] });
    expect([authority, door]).toEqual([first.authority, first.door]);
    expect(names).not.toContain('seeds.example.org');
    expect(notes.join()).toMatch(/was not made for seeds\.example\.org.*remove the folder .*tls/);
  });

  it('and a computer’s own full name that came later is left out without a word', () => {
    start();
    expect(start({ found: ['192.168.1.20', 'seedroom.example.net'] })).toMatchObject({ notes: [] });
  });

  it('a name without a dot is never covered: it would be all sites that end in it', () => {
    const { names, notes } = start({ asked: ['garden'] });
    expect(names).not.toContain('garden');
    expect(notes.join()).toContain("cannot speak for 'garden'");
    expect(notes.join()).toContain("Use 'garden.local'");
  });
});
