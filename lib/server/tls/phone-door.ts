import 'server-only';
import { environment, isLoopbackOnly } from '../env';
import { fingerprintOf, nameOfAuthority, readAuthority } from './authority-file';
import { hasBroughtCertificate, phoneAddresses } from './door-certificate';

/** How phones come in as Hilum runs now. */
export type PhoneDoor =
  | { kind: 'this-computer-only' }
  /** others come in, but without https: no camera, nothing offline */
  | { kind: 'without-https' }
  /** with a certificate that phones trust already */
  | { kind: 'trusted'; addresses: string[] }
  /** with one that each phone is told once to trust */
  | { kind: 'own-authority'; addresses: string[]; called: string; fingerprint: string };

/**
 * @param bankAddress  where phones reach this bank, as its steward has set it; goes before what this computer knows
 */
export function phoneDoor(bankAddress: string | null): PhoneDoor {
  if (isLoopbackOnly()) return { kind: 'this-computer-only' };
  const { HILUM_TLS_PORT, HILUM_ADDRESS, DATA_DIR } = environment();
  const said = bankAddress?.startsWith('https:') ? [new URL(bankAddress).origin] : [];
  const authority = HILUM_TLS_PORT === undefined || hasBroughtCertificate() ? null : readAuthority(DATA_DIR);
  if (HILUM_TLS_PORT === undefined) {
    const addresses = [...said, ...(HILUM_ADDRESS?.startsWith('https:') ? [new URL(HILUM_ADDRESS).origin] : [])];
    return addresses.length > 0 ? { kind: 'trusted', addresses: unique(addresses) } : { kind: 'without-https' };
  }
  const addresses = unique([...said, ...phoneAddresses(HILUM_TLS_PORT)]);
  return authority
    ? { kind: 'own-authority', addresses, called: nameOfAuthority(authority), fingerprint: fingerprintOf(authority) }
    : { kind: 'trusted', addresses };
}

const unique = (addresses: string[]) => [...new Set(addresses)];
