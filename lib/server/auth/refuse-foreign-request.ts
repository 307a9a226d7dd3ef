/**
 * Refuses requests that come by another name or from another site's page.
 *
 * On loopback nobody signs in, so the browser itself is the way in for strangers: a page anywhere can send requests to
 * this computer, and a name that an attacker owns can be pointed at 127.0.0.1 (DNS rebinding). Both show in the Host
 * and Origin headers, which a page cannot change. With accounts the same check stops forged form posts.
 */
export interface RequestFacts {
  /** Host header: name, and port if it is not the scheme's own. */
  host: string | null;
  /** Origin header; browsers send it with every POST and every cross-site fetch. */
  origin: string | null;
  /** Sec-Fetch-Site header; left out where only Host and Origin are of interest. */
  fetchSite?: string | null;
  /** HTTP method; left out where only Host and Origin are of interest. */
  method?: string;
}

export interface DoorRules {
  /** True when the app has no sign-in, because only this computer can reach it. */
  loopbackOnly: boolean;
  /** The address people use when a proxy stands before the app: 'https://seeds.example.org'. */
  publicAddress?: string;
}

export interface Refusal {
  status: 403 | 421;
  message: string;
}

const LOOPBACK_NAMES = new Set(['127.0.0.1', 'localhost', '[::1]']);
const READING = new Set(['GET', 'HEAD', 'OPTIONS']);

/**
 * @param facts  headers as they came; a missing Origin is no reason to refuse (links and address bars send none)
 * @param rules  which door is open
 * @returns null to let the request in, or the status and plain words to refuse it with: 421 for a foreign Host,
 *   403 for a foreign page
 * Checked in tests/server/auth/refuse-foreign-request.test.ts
 */
export function refuseForeignRequest(facts: RequestFacts, rules: DoorRules): Refusal | null {
  if (rules.loopbackOnly && !LOOPBACK_NAMES.has(hostName(facts.host))) {
    return {
      status: 421,
      message: 'Hilum answers only this computer here. Open it at http://127.0.0.1 or http://localhost and its port.',
    };
  }
  const fromForeignPage =
    (facts.origin !== null && !isOwnOrigin(facts.origin, facts.host, rules.publicAddress)) ||
    (facts.method !== undefined &&
      !READING.has(facts.method) &&
      (facts.fetchSite === 'cross-site' || facts.fetchSite === 'same-site'));
  return fromForeignPage
    ? { status: 403, message: "This request came from another site's page, so it was refused. Nothing was changed." }
    : null;
}

function hostName(host: string | null): string {
  return (host ?? '').toLowerCase().replace(/:\d+$/, '');
}

function isOwnOrigin(origin: string, host: string | null, publicAddress: string | undefined): boolean {
  if (publicAddress !== undefined && origin === new URL(publicAddress).origin) return true;
  try {
    return new URL(origin).host === (host ?? '').toLowerCase();
  } catch {
    return false; // 'null': a sandboxed frame or a file
  }
}
