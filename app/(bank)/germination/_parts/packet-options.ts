import type { Option } from '@/app/_components/form/fields';
import { formatCount, formatDate } from '@/app/_format/figures';
import type { LotForTesting } from '@/lib/server/queries/lots-for-testing';

/** A lot's packets as they are told apart on the shelf: number, role, what they hold. */
export function packetOptions(packets: LotForTesting['packets']): Option[] {
  return packets.map(({ id, number, role, seeds }) => ({
    value: id,
    label: `${number} · ${role} · ${formatCount(seeds)} seeds`,
  }));
}

/** Seed that was taken out for a test before: when, how much, from which packet. */
export function takenOutOptions(takenOut: LotForTesting['takenOut']): Option[] {
  return takenOut.map(({ id, packetNumber, on, seeds }) => ({
    value: id,
    label: `seed was taken out on ${formatDate(on)}: ${formatCount(seeds)} seeds of ${packetNumber}`,
  }));
}
