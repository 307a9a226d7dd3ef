import { notFound } from 'next/navigation';
import { readParameter } from '@/app/_format/read-parameter';
import { getPacket } from '@/lib/server/queries/packet-page';

export interface PacketProps {
  params: Promise<{ number: string }>;
}

/** The packet that the address names, for a form about it; answers 404 where there is none. */
export async function packetOfAddress({ params }: PacketProps) {
  const packet = await getPacket(readParameter((await params).number));
  if (!packet) notFound();
  return packet;
}
