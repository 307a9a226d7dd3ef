import { createPrivateKey, X509Certificate } from 'node:crypto';
import { issueAuthority, issueDoorCertificate } from '@/lib/server/tls/issue-certificate';
import type { Issued, PemPair } from '@/lib/server/tls/pem-pair';
import { PRIVATE_DOMAINS, PRIVATE_NETWORKS } from '@/lib/server/tls/private-networks';

export const asPair = ({ certificate, key }: Issued): PemPair => ({
  certificate: new X509Certificate(certificate),
  key: createPrivateKey(key),
});

/** An authority bound to private networks and names, and what else it may speak for. */
export const anAuthority = ({ now = new Date(), also = [] as string[] } = {}): Issued =>
  issueAuthority('Hilum on seedroom', [...PRIVATE_NETWORKS, ...PRIVATE_DOMAINS, ...also], now);

export const aDoorCertificate = (authority: Issued, names: string[], now = new Date()): Issued =>
  issueDoorCertificate(names, asPair(authority), now);
