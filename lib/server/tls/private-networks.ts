import { BlockList, isIP } from 'node:net';

/**
 * Addresses and names that mean something only inside a house or on one computer. The bank's own authority is bound to
 * them: whoever trusts it on a private phone trusts it for these and for no site of the internet.
 *
 * Sources: RFC 1918 (10/8, 172.16/12, 192.168/16), RFC 6598 (100.64/10), RFC 3927 (169.254/16), RFC 4193 (fc00::/7),
 * RFC 4291 (::1, fe80::/10); names RFC 6761 (localhost), RFC 6762 (local), RFC 8375 (home.arpa). From memory.
 */
export const PRIVATE_NETWORKS = [
  '127.0.0.0/8',
  '10.0.0.0/8',
  '172.16.0.0/12',
  '192.168.0.0/16',
  '100.64.0.0/10',
  '169.254.0.0/16',
  '::1/128',
  'fc00::/7',
  'fe80::/10',
] as const;

export const PRIVATE_DOMAINS = ['localhost', 'local', 'home.arpa'] as const;

/**
 * Whether an address or a host name lies in one of the networks ('10.0.0.0/8', '192.0.2.7/32') or domains ('local': that
 * name and all that end in '.local').
 *
 * Checked in tests/server/tls/own-certificate.test.ts
 */
export function liesIn(name: string, permitted: readonly string[]): boolean {
  const version = isIP(name);
  if (version === 0) return permitted.some((domain) => name === domain || name.endsWith(`.${domain}`));
  const family = version === 4 ? 'ipv4' : 'ipv6';
  const list = new BlockList();
  for (const network of permitted) {
    const [start = '', bits = ''] = network.split('/');
    if (isIP(start) === version) list.addSubnet(start, Number(bits), family);
  }
  return list.check(name, family);
}

export const isPrivateAddress = (address: string): boolean => liesIn(address, PRIVATE_NETWORKS);
