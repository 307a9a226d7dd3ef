import type { Option } from '@/app/_components/form/fields';
import { formatCount } from '@/app/_format/figures';
import type { LotForTesting } from '@/lib/server/queries/lots-for-testing';

/** A lot's packets as they are told apart on the shelf: number, role, what they hold. */
export function packetOptions(packets: LotForTesting['packets']): Option[] {
  return packets.map(({ id, number, role, seeds }) => ({
    value: id,
    label: `${number} · ${role} · ${formatCount(seeds)} seeds`,
  }));
}
