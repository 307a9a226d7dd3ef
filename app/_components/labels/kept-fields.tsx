import type { Address } from '@/app/(bank)/reference/_parts/read-question';
import { writePacketList } from '@/lib/domain/labels/packet-list';
import { readLabelsAddress } from './labels-address';

/** What one of the page's forms sends along, so that the others lose nothing. */
export function KeptFields({ address, except }: { address: Address; except: readonly string[] }) {
  const read = readLabelsAddress(address);
  const chosen = { packets: writePacketList(read.packets), trays: read.trays.join(',') };
  const kept = { ...address, ...chosen, add: undefined, all: undefined, page: undefined, sheet: undefined };
  return Object.entries(kept).flatMap(([name, value]) => {
    const single = Array.isArray(value) ? value[0] : value;
    if (except.includes(name) || !single) return [];
    return [<input key={name} type="hidden" name={name} value={single} />];
  });
}
