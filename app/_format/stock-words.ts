/** What of a lot or an accession lies where, in one sentence. */
import { PACKET_ROLES } from '@/lib/domain/stock/packet-roles';
import { pathInWords } from './packet-words';

export interface PacketInWords {
  role: string;
  seeds: number;
  place: { steps: { id: string; name: string }[]; atPartnerBank: boolean } | null;
}

/**
 * @param packets  all packets; empty ones count for nothing
 * @returns 'Active stock in Fridge › top shelf, base stock in Freezer A, safety duplicate in Partner bank, held elsewhere.'
 *          or null where no packet holds seed
 * Checked in tests/app/stock-words.test.ts
 */
export function stockInWords(packets: readonly PacketInWords[]): string | null {
  const held = packets.filter(({ seeds }) => seeds > 0);
  const parts = PACKET_ROLES.flatMap(({ key, label }) => {
    const places = [...new Set(held.filter(({ role }) => role === key).map(placeInWords))];
    return places.length === 0 ? [] : [`${label} ${listed(places)}`];
  });
  if (parts.length === 0) return null;
  const sentence = parts.join('; ');
  return `${sentence.charAt(0).toUpperCase()}${sentence.slice(1)}.`;
}

function placeInWords({ place }: PacketInWords): string {
  if (!place) return 'in a place that nobody wrote down';
  return `in ${pathInWords(place)}${place.atPartnerBank ? ' (held elsewhere)' : ''}`;
}

function listed(parts: string[]): string {
  const last = parts.at(-1) as string;
  return parts.length === 1 ? last : `${parts.slice(0, -1).join(', ')} and ${last}`;
}

/**
 * What is not safe about where it lies: no safety duplicate, or one that would burn with the rest.
 *
 * @returns one sentence, or null where a safety duplicate lies apart, and where there is no seed to duplicate
 * Checked in tests/app/stock-words.test.ts
 */
export function duplicateWarning(packets: readonly PacketInWords[]): string | null {
  const held = packets.filter(({ seeds }) => seeds > 0);
  if (held.length === 0) return null;
  const duplicates = held.filter(({ role }) => role === 'safety-duplicate');
  if (duplicates.length === 0) return 'No safety duplicate: what is lost here is lost for good.';
  const outermost = ({ place }: PacketInWords) => place?.steps[0]?.id ?? null;
  const others = new Set(held.filter(({ role }) => role !== 'safety-duplicate').map(outermost));
  const apart = duplicates.some((one) => one.place?.atPartnerBank || !others.has(outermost(one)));
  return apart ? null : 'The safety duplicate lies in the same store as the rest, and would be lost with it.';
}
