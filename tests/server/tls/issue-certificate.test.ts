import { execFileSync } from 'node:child_process';
import { createPrivateKey, X509Certificate } from 'node:crypto';
import { once } from 'node:events';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { checkServerIdentity, connect, createServer } from 'node:tls';
import { afterAll, expect, it } from 'vitest';
import { permittedBy } from '@/lib/server/tls/certificate-names';
import { aDoorCertificate, anAuthority } from '@/tests/support/certificates';

const DAY_MS = 86_400_000;
const directory = mkdtempSync(path.join(tmpdir(), 'hilum-x509-'));
afterAll(() => rmSync(directory, { recursive: true, force: true }));

function openssl(...args: string[]): string {
  return execFileSync('openssl', args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'pipe'] });
}

function inFile(name: string, pem: string): string {
  const file = path.join(directory, name);
  writeFileSync(file, pem);
  return file;
}

/** What OpenSSL says of a certificate under an authority that it is told to trust. */
function verified(authority: string, certificate: string): string {
  const [ca, door] = [inFile('ca.pem', authority), inFile('door.pem', certificate)];
  try {
    return openssl('verify', '-x509_strict', '-purpose', 'sslserver', '-CAfile', ca, door).trim();
  } catch (error) {
    return String((error as { stderr: string }).stderr);
  }
}

it('OpenSSL reads an authority that may sign certificates of servers for private names, ten years, and none below', () => {
  const text = openssl(
    'x509',
    '-noout',
    '-text',
    '-in',
    inFile('ca.pem', anAuthority({ also: ['seeds.example.org'] }).certificate),
  );
  expect(text).toContain('X509v3 Basic Constraints: critical\n                CA:TRUE, pathlen:0');
  expect(text).toContain('X509v3 Key Usage: critical\n                Certificate Sign, CRL Sign');
  expect(text).toContain('X509v3 Extended Key Usage: \n                TLS Web Server Authentication');
  expect(text).toContain('X509v3 Name Constraints: critical\n                Permitted:');
  for (const permitted of [
    'IP:192.168.0.0/255.255.0.0',
    'IP:10.0.0.0/255.0.0.0',
    'DNS:local\n',
    'DNS:seeds.example.org',
  ]) {
    expect(text).toContain(permitted);
  }
  expect(text).toContain('ASN1 OID: prime256v1');
  expect(text).toContain('ecdsa-with-SHA256');
  expect(text).toContain('Subject: O = Hilum, CN = Hilum on seedroom');
});

it('OpenSSL reads a door’s certificate that may do nothing but serve its names', () => {
  const door = aDoorCertificate(anAuthority(), ['seedroom.local', '192.168.1.20', 'fd00::7']);
  const text = openssl('x509', '-noout', '-text', '-in', inFile('door.pem', door.certificate));
  expect(text).toContain('X509v3 Basic Constraints: critical\n                CA:FALSE');
  expect(text).toContain('X509v3 Key Usage: critical\n                Digital Signature\n');
  expect(text).toContain('X509v3 Extended Key Usage: \n                TLS Web Server Authentication\n');
  expect(text).toContain('DNS:seedroom.local, IP Address:192.168.1.20, IP Address:FD00:0:0:0:0:0:0:7');
  expect(text).toContain('Issuer: O = Hilum, CN = Hilum on seedroom');
});

it('the authority lasts ten years, the door 397 days and never longer than its authority', () => {
  const now = new Date('2026-11-25T12:00:00Z');
  const authority = anAuthority({ now });
  const lasts = (pem: string) => {
    const { validFrom, validTo } = new X509Certificate(pem);
    return [new Date(validFrom).toISOString(), new Date(validTo).toISOString()];
  };
  expect(lasts(authority.certificate)).toEqual(['2026-11-24T12:00:00.000Z', '2036-11-25T12:00:00.000Z']);
  const [from, to] = lasts(aDoorCertificate(authority, ['localhost'], now).certificate);
  expect(Date.parse(to as string) + 1000 - Date.parse(from as string)).toBe(397 * DAY_MS);
  const late = new Date('2036-06-01T00:00:00Z');
  expect(lasts(aDoorCertificate(authority, ['localhost'], late).certificate)[1]).toBe('2036-11-25T12:00:00.000Z');
});

it.each([
  'localhost',
  '127.0.0.1',
  '::1',
  '192.168.1.20',
  '10.1.2.3',
  '172.31.255.1',
  '169.254.1.1',
  '100.64.0.1',
  'fd12::7',
  'seedroom.local',
  'seedroom.home.arpa',
  'seeds.example.org',
  'www.seeds.example.org',
  '198.51.100.7',
])('OpenSSL accepts %s under the authority', (name) => {
  const authority = anAuthority({ also: ['seeds.example.org', '198.51.100.7/32'] });
  expect(verified(authority.certificate, aDoorCertificate(authority, [name]).certificate)).toMatch(/door\.pem: OK$/);
});

it.each([
  'bank.example.com',
  'example.org',
  'notseeds.example.org',
  'seedroom',
  'local.example',
  'xlocal',
  '192.0.2.1',
  '172.15.255.254',
  '172.32.0.1',
  '11.0.0.1',
  '100.128.0.1',
  '198.51.100.8',
  '2001:db8::1',
  '::2',
])(
  'OpenSSL refuses %s, though the authority’s own key signed it: a stolen key speaks for no site of the internet',
  (name) => {
    const authority = anAuthority({ also: ['seeds.example.org', '198.51.100.7/32'] });
    expect(
      verified(authority.certificate, aDoorCertificate(authority, ['seedroom.local', name]).certificate),
    ).toContain('permitted subtree violation');
  },
);

it('OpenSSL refuses a certificate that the door’s own key signed for another name', () => {
  const authority = anAuthority();
  const door = aDoorCertificate(authority, ['seedroom.local']);
  const forged = aDoorCertificate(door, ['seedroom.local']);
  const chain = inFile('between.pem', door.certificate);
  const [ca, leaf] = [inFile('ca.pem', authority.certificate), inFile('leaf.pem', forged.certificate)];
  expect(() => openssl('verify', '-CAfile', ca, '-untrusted', chain, leaf)).toThrow(/invalid CA certificate/);
});

it.each([
  ['192.168.1.20', true],
  ['seedroom.local', true],
  ['192.168.1.21', false],
  ['other.local', false],
  ['fd00::7', true],
])('Node’s TLS finds %s in the certificate: %s', async (name, isFound) => {
  const authority = anAuthority();
  const door = aDoorCertificate(authority, ['192.168.1.20', 'seedroom.local', 'fd00::7']);
  const server = createServer({ cert: door.certificate, key: door.key }, (socket) => socket.end()).listen(
    0,
    '127.0.0.1',
  );
  await once(server, 'listening');
  const { port } = server.address() as AddressInfo;
  const outcome = await new Promise((resolve) => {
    const socket = connect({
      port,
      host: '127.0.0.1',
      ca: authority.certificate,
      checkServerIdentity: (_host, peer) => checkServerIdentity(name, peer),
    });
    socket.on('secureConnect', () => {
      resolve(true);
      socket.destroy();
    });
    socket.on('error', () => resolve(false));
  });
  server.close();
  expect(outcome).toBe(isFound);
});

it('each certificate has a key and a serial number of its own', () => {
  const authority = anAuthority();
  const [one, other] = [aDoorCertificate(authority, ['localhost']), aDoorCertificate(authority, ['localhost'])];
  expect(one.key).not.toBe(other.key);
  expect(createPrivateKey(one.key).asymmetricKeyDetails).toEqual({ namedCurve: 'prime256v1' });
  expect(new X509Certificate(one.certificate).serialNumber).not.toBe(
    new X509Certificate(other.certificate).serialNumber,
  );
});

it('reads back what an authority may speak for', () => {
  const permitted = permittedBy(
    new X509Certificate(anAuthority({ also: ['seeds.example.org', '198.51.100.7/32'] }).certificate),
  );
  expect(permitted).toEqual(
    expect.arrayContaining(['10.0.0.0/8', 'fc00::/7', '::1/128', 'local', 'seeds.example.org', '198.51.100.7/32']),
  );
});
