/**
 * What stands against sending seed of a lot: one rule book, read by the screen on which a request is prepared and by the
 * command that sends it.
 */
import type { PacketRole } from './packet-roles';
import { type OwnSeed, REGROWINGS_KEPT, SEEDS_KEPT_FOR_TESTS, seedToSpare } from './seed-to-spare';
import type { SharingTermsKey } from './sharing-terms';

/** One line of a request with what is known of its lot today. Seeds are whole and >= 0. */
export interface SharingLineFacts {
  sharing: SharingTermsKey;
  /** the bank's own seed of the lot */
  own: OwnSeed;
  /** seeds for all regrowings that are kept for; Infinity when no number is enough, null without a forecast */
  forRegrowing: number | null;
  /** null: none chosen yet */
  packet: { number: string; role: PacketRole; seeds: number } | null;
  /** null: not said yet */
  seeds: number | null;
  /** what the other lines of the request take from the same lot, and from the same packet */
  otherSeedsOfLot: number;
  otherSeedsOfPacket: number;
}

export interface SharingHindrance {
  kind:
    | 'not-to-be-shared'
    | 'nothing-chosen'
    | 'packet-not-drawn-from'
    | 'packet-too-small'
    | 'too-little-kept'
    | 'no-forecast'
    | 'may-be-dead';
  /** in plain words: what is the matter, and what to do */
  sentence: string;
  /** a steward may send it all the same, with a reason */
  mayBeOverruled: boolean;
}

/**
 * What stands against one line of a request, the gravest first; null when it can be sent.
 *
 * @param line  see SharingLineFacts
 * @throws RangeError as seedToSpare does
 * Checked in tests/domain/stock/sharing-hindrance.test.ts
 */
export function sharingHindrance(line: SharingLineFacts): SharingHindrance | null {
  const { packet, seeds } = line;
  if (line.sharing === 'not') {
    return firm('not-to-be-shared', 'This accession may not be shared. Take the line out.');
  }
  if (packet === null || seeds === null) return firm('nothing-chosen', 'Choose the packet and the number of seeds.');
  if (packet.role !== 'active') {
    const role = packet.role === 'base' ? 'base stock' : 'a safety duplicate';
    return firm(
      'packet-not-drawn-from',
      `${packet.number} is ${role} and is not drawn from. Choose active stock, or split some off first.`,
    );
  }
  const leftInPacket = Math.max(0, packet.seeds - line.otherSeedsOfPacket);
  if (seeds > leftInPacket) {
    return firm(
      'packet-too-small',
      `${packet.number} holds ${leftInPacket} seeds for this line. Take fewer, or another packet.`,
    );
  }
  const spare = seedToSpare({ ...line.own, forRegrowing: line.forRegrowing });
  if (!spare.ok) {
    return spare.reason === 'no-forecast'
      ? forSteward('no-forecast', 'This lot has no forecast, so nobody can say how much must be kept of it.')
      : forSteward(
          'may-be-dead',
          'So much of this lot may be dead that no number of its seeds is sure to regrow it. Test it first.',
        );
  }
  const left = Math.max(0, spare.spare - line.otherSeedsOfLot);
  if (seeds <= left) return null;
  const owned = line.own.active + line.own.base;
  return forSteward(
    'too-little-kept',
    `${left === 0 ? 'No seed' : `Only ${left} seeds`} can be spared: of ${owned} in the bank's own packets, ${line.forRegrowing} are kept for ` +
      `${REGROWINGS_KEPT} regrowings and ${SEEDS_KEPT_FOR_TESTS} for tests.`,
  );
}

const firm = (kind: SharingHindrance['kind'], sentence: string): SharingHindrance => ({
  kind,
  sentence,
  mayBeOverruled: false,
});
const forSteward = (kind: SharingHindrance['kind'], sentence: string): SharingHindrance => ({
  kind,
  sentence,
  mayBeOverruled: true,
});
