import { createHash, generateKeyPairSync, type KeyObject, randomBytes, sign } from 'node:crypto';
import { isIP } from 'node:net';
import { AsnConvert, OctetString } from '@peculiar/asn1-schema';
import * as x509 from '@peculiar/asn1-x509';
import type { Issued, PemPair } from './pem-pair';

const DAY_MS = 86_400_000;
const AUTHORITY_YEARS = 10;
/** Longer ones are refused by phones. */
const DOOR_DAYS = 397;
/** A phone's clock may be behind this computer's. */
const CLOCKS_APART_MS = DAY_MS;
const COMMON_NAME = '2.5.4.3';
const ORGANISATION = '2.5.4.10';
const LONGEST_COMMON_NAME = 64;

/**
 * A new authority: ECDSA P-256, ten years, for certificates of servers alone, and none below it but a server's own. Its
 * name constraints are critical: a program that does not understand them must not trust it at all.
 *
 * @param name       what a phone shows in its list: 'Hilum on seedroom'
 * @param permitted  networks ('10.0.0.0/8') and domains ('local') that it may speak for
 * Checked with OpenSSL and Node's TLS in tests/server/tls/issue-certificate.test.ts
 */
export function issueAuthority(name: string, permitted: readonly string[], now: Date): Issued {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const subject = nameOf(name);
  const notAfter = new Date(now);
  notAfter.setUTCFullYear(now.getUTCFullYear() + AUTHORITY_YEARS);
  const constraints = new x509.NameConstraints({
    permittedSubtrees: new x509.GeneralSubtrees(
      permitted.map((each) => new x509.GeneralSubtree({ base: generalName(each) })),
    ),
  });
  return issued(
    subject,
    { notBefore: new Date(now.getTime() - CLOCKS_APART_MS), notAfter },
    publicKey,
    [
      extension(x509.id_ce_basicConstraints, true, new x509.BasicConstraints({ cA: true, pathLenConstraint: 0 })),
      extension(
        x509.id_ce_keyUsage,
        true,
        new x509.KeyUsage(x509.KeyUsageFlags.keyCertSign | x509.KeyUsageFlags.cRLSign),
      ),
      extension(x509.id_ce_extKeyUsage, false, new x509.ExtendedKeyUsage([x509.id_kp_serverAuth])),
      extension(x509.id_ce_nameConstraints, true, constraints),
      extension(x509.id_ce_subjectKeyIdentifier, false, new x509.SubjectKeyIdentifier(keyIdentifier(publicKey))),
    ],
    { subject, key: privateKey },
    privateKey,
  );
}

/**
 * The certificate that the door shows, with a key of its own; never longer than its authority.
 *
 * @param names  host names and addresses, at least one; all of them must be permitted by the authority, since one that
 *   is not makes the whole certificate worthless
 */
export function issueDoorCertificate(names: readonly string[], authority: PemPair, now: Date): Issued {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const issuer = AsnConvert.parse(authority.certificate.raw, x509.Certificate).tbsCertificate;
  const notBefore = new Date(now.getTime() - CLOCKS_APART_MS);
  const longest = notBefore.getTime() + DOOR_DAYS * DAY_MS - 1000;
  const notAfter = new Date(Math.min(longest, issuer.validity.notAfter.getTime().getTime()));
  const issuerKey = AsnConvert.serialize(issuer.subjectPublicKeyInfo);
  return issued(
    nameOf('Hilum'),
    { notBefore, notAfter },
    publicKey,
    [
      extension(x509.id_ce_basicConstraints, true, new x509.BasicConstraints({ cA: false })),
      extension(x509.id_ce_keyUsage, true, new x509.KeyUsage(x509.KeyUsageFlags.digitalSignature)),
      extension(x509.id_ce_extKeyUsage, false, new x509.ExtendedKeyUsage([x509.id_kp_serverAuth])),
      extension(x509.id_ce_subjectAltName, false, new x509.SubjectAlternativeName(names.map(alternativeName))),
      extension(x509.id_ce_subjectKeyIdentifier, false, new x509.SubjectKeyIdentifier(keyIdentifier(publicKey))),
      extension(
        x509.id_ce_authorityKeyIdentifier,
        false,
        new x509.AuthorityKeyIdentifier({ keyIdentifier: new x509.KeyIdentifier(identifierOf(issuerKey)) }),
      ),
    ],
    { subject: issuer.subject, key: authority.key },
    privateKey,
  );
}

function issued(
  subject: x509.Name,
  validity: { notBefore: Date; notAfter: Date },
  publicKey: KeyObject,
  extensions: x509.Extension[],
  issuer: { subject: x509.Name; key: KeyObject },
  privateKey: KeyObject,
): Issued {
  // ecdsa-with-SHA256, RFC 5758
  const algorithm = new x509.AlgorithmIdentifier({ algorithm: '1.2.840.10045.4.3.2' });
  const tbsCertificate = new x509.TBSCertificate({
    version: x509.Version.v3,
    serialNumber: newSerialNumber(),
    signature: algorithm,
    issuer: issuer.subject,
    validity: new x509.Validity(validity),
    subject,
    subjectPublicKeyInfo: AsnConvert.parse(spki(publicKey), x509.SubjectPublicKeyInfo),
    extensions: new x509.Extensions(extensions),
  });
  const signature = sign('sha256', Buffer.from(AsnConvert.serialize(tbsCertificate)), issuer.key);
  const certificate = AsnConvert.serialize(
    new x509.Certificate({ tbsCertificate, signatureAlgorithm: algorithm, signatureValue: bytes(signature) }),
  );
  return {
    certificate: `-----BEGIN CERTIFICATE-----\n${wrapped(Buffer.from(certificate).toString('base64'))}\n-----END CERTIFICATE-----\n`,
    key: privateKey.export({ type: 'pkcs8', format: 'pem' }).toString(),
  };
}

function nameOf(commonName: string): x509.Name {
  const part = (type: string, text: string) =>
    new x509.RelativeDistinguishedName([
      new x509.AttributeTypeAndValue({ type, value: new x509.AttributeValue({ utf8String: text }) }),
    ]);
  return new x509.Name([part(ORGANISATION, 'Hilum'), part(COMMON_NAME, commonName.slice(0, LONGEST_COMMON_NAME))]);
}

const alternativeName = (name: string) =>
  new x509.GeneralName(isIP(name) === 0 ? { dNSName: name } : { iPAddress: name });

const generalName = (permitted: string) =>
  new x509.GeneralName(permitted.includes('/') ? { iPAddress: permitted } : { dNSName: permitted });

const extension = (extnID: string, critical: boolean, value: object) =>
  new x509.Extension({ extnID, critical, extnValue: new OctetString(AsnConvert.serialize(value)) });

/** 127 bits of chance and never 0: nobody can foresee it, and it is positive. */
function newSerialNumber(): ArrayBuffer {
  const serial = randomBytes(16);
  serial[0] = ((serial[0] ?? 0) & 0x3f) | 0x40;
  return bytes(serial);
}

const spki = (key: KeyObject) => bytes(key.export({ type: 'spki', format: 'der' }));

const keyIdentifier = (key: KeyObject) => identifierOf(spki(key));

/** RFC 5280, 4.2.1.2 (1): SHA-1 of the key's bits. A name, not a protection. */
const identifierOf = (spkiDer: ArrayBuffer) =>
  bytes(
    createHash('sha1')
      .update(Buffer.from(AsnConvert.parse(spkiDer, x509.SubjectPublicKeyInfo).subjectPublicKey))
      .digest(),
  );

const bytes = (buffer: Buffer): ArrayBuffer => new Uint8Array(buffer).buffer as ArrayBuffer;
const wrapped = (base64: string) => base64.replace(/(.{64})(?=.)/g, '$1\n');
