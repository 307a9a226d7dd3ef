import { HiddenField, SelectField } from '@/app/_components/form/fields';
import { formatCount } from '@/app/_format/figures';
import type { PacketRow } from '@/lib/server/queries/packets';

/** Which packet of a lot: asked only when there are several. */
export function PacketField({ packets, chosen }: { packets: PacketRow[]; chosen: PacketRow }) {
  if (packets.length === 1) return <HiddenField name="packetId" value={chosen.id} />;
  return (
    <SelectField
      name="packetId"
      label="Packet"
      options={packets.map((packet) => ({
        value: packet.id,
        label: `${packet.number}: ${formatCount(packet.seeds)} seeds${packet.placement ? ` in ${packet.placement.storeName}` : ''}`,
      }))}
      defaultValue={chosen.id}
    />
  );
}

/** The packet that the address asks for, else the fullest one. */
export function choosePacket(packets: PacketRow[], asked: string | string[] | undefined): PacketRow | null {
  const fullest = [...packets].sort((a, b) => b.seeds - a.seeds)[0] ?? null;
  return packets.find((packet) => packet.number === asked) ?? fullest;
}
