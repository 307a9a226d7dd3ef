import { packetRoleLabel } from '@/lib/domain/stock/packet-roles';
import { changePacketRoleSchema } from '@/lib/schemas/packet';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { isOnlySafetyDuplicate } from './only-safety-duplicate';
import { packetInHand } from './packet-in-hand';
import { isAtPartnerBank } from './require-safe-placement';

/** Changes what a packet is kept for: active stock, base stock, safety duplicate. */
export const changePacketRole = defineCommand({
  name: 'change-packet-role',
  role: 'volunteer',
  schema: changePacketRoleSchema,
  async run({ tx, audit, rejudge }, input) {
    const packet = await packetInHand(tx, input.packetId);
    const { role, last } = packet;
    if (input.role === role) throw fieldError({ role: `It is kept as ${packetRoleLabel(role)} already.` });
    if (last && (await isAtPartnerBank(tx, last.storeId))) {
      throw fieldError({
        role: `It lies in ${last.store.name}, at a partner bank, and is a safety duplicate there. Move it back first.`,
      });
    }
    if (!input.loseDuplicate && (await isOnlySafetyDuplicate(tx, packet.id))) {
      throw fieldError({
        role: `This is the only safety duplicate of lot ${packet.lot.number}.`,
        loseDuplicate: 'Tick this if the lot shall have none.',
      });
    }
    await tx.packet.update({ where: { id: packet.id }, data: { role: input.role } });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `Packet ${packet.number} of lot ${packet.lot.number} is ${packetRoleLabel(input.role)} now, no longer ${packetRoleLabel(role)}`,
      before: { role },
      after: { role: input.role },
    });
    return { lotNumber: packet.lot.number, number: packet.number };
  },
});
