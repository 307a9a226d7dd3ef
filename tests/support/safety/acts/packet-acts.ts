import { changePacketRole } from '@/lib/server/commands/change-packet-role';
import { recordPacketCare } from '@/lib/server/commands/record-packet-care';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { type Act, volunteer } from './act';
import { ids, packetsNow } from './bank-now';

/** What is done to a packet where it lies. */
export const PACKET_ACTS: Record<string, Act> = {
  take: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    // Now and then more than there is: a refusal must leave nothing behind.
    const amount = choose.whole(1, Math.max(1, Math.ceil(packet.seeds * 0.4)) + (choose.whole(0, 9) === 9 ? 5000 : 0));
    const reason = choose.one(['sowing', 'sharing', 'discard', 'loss']);
    return volunteer(takeSeedOut, { packetId: packet.id, amount: String(amount), unit: 'seeds', reason });
  },
  undo: (choose) => {
    const movementId = choose.one(
      ids(`SELECT m."id" FROM "Movement" m WHERE m."reason" <> 'correction'
        AND NOT EXISTS (SELECT 1 FROM "Movement" c WHERE c."correctsId" = m."id") ORDER BY m."rowid" DESC LIMIT 8`),
    );
    return movementId ? volunteer(undoMovement, { movementId }) : null;
  },
  purpose: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const role = choose.one(['active', 'base', 'safety-duplicate']);
    return volunteer(changePacketRole, { packetId: packet.id, role, loseDuplicate: 'on' });
  },
  care: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const what = choose.one(['sealed', 'opened', 'desiccant']);
    return volunteer(recordPacketCare, {
      packetId: packet.id,
      what,
      desiccant: what === 'desiccant' ? 'silica-gel' : '',
    });
  },
};
