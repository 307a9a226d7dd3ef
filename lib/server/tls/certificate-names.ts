import type { X509Certificate } from 'node:crypto';
import { isIP, SocketAddress } from 'node:net';
import { AsnConvert } from '@peculiar/asn1-schema';
import { Certificate, id_ce_nameConstraints, NameConstraints } from '@peculiar/asn1-x509';

/** Host names and addresses that a certificate is for. */
export const namesIn = (certificate: X509Certificate): string[] =>
  (certificate.subjectAltName ?? '')
    .split(', ')
    .flatMap((each) => /^(?:DNS|IP Address):(.+)$/.exec(each)?.[1] ?? [])
    .map(asOneWrites);

/** IPv6 addresses are written in several ways, host names in capitals and without. */
export const asOneWrites = (name: string): string =>
  isIP(name) === 6 ? new SocketAddress({ address: name, family: 'ipv6' }).address : name.toLowerCase();

/** The networks ('10.0.0.0/8') and domains that an authority may speak for; none where it is bound to nothing. */
export function permittedBy(authority: X509Certificate): string[] {
  const { tbsCertificate } = AsnConvert.parse(authority.raw, Certificate);
  const found = tbsCertificate.extensions?.find(({ extnID }) => extnID === id_ce_nameConstraints);
  if (!found) return [];
  const { permittedSubtrees } = AsnConvert.parse(found.extnValue.buffer, NameConstraints);
  return [...(permittedSubtrees ?? [])].flatMap(({ base }) => base.iPAddress ?? base.dNSName ?? []);
}
