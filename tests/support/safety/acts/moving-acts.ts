import { addDays } from '@/lib/domain/calendar/calendar-date';
import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { mergePackets } from '@/lib/server/commands/merge-packets';
import { movePacket } from '@/lib/server/commands/move-packet';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { type Act, volunteer } from './act';
import { ids, packetsNow } from './bank-now';
import { daySince } from './day-since';
import { packingFields, placementFields } from './packing-fields';

/** Seed that goes into a store, from one to another, or from packet to packet. */
export const MOVING_ACTS: Record<string, Act> = {
  move: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const from = daySince(choose, packet.lastFrom);
    const { storeId, container, moisturePercent, ...ticks } = placementFields(choose);
    const asItIs = choose.whole(0, 1) === 1;
    return volunteer(movePacket, {
      ...{ packetId: packet.id, storeId, from, ...ticks },
      ...(asItIs ? {} : { container, moisturePercent }),
    });
  },
  repack: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(repackPacket, {
      packetId: packet.id,
      from: daySince(choose, packet.lastFrom),
      ...packingFields(choose),
    });
  },
  split: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(splitPacket, {
      packetId: packet.id,
      amount: String(choose.whole(1, Math.max(1, packet.seeds))),
      unit: 'seeds',
      role: choose.one(['active', 'base', 'safety-duplicate']),
      from: daySince(choose, packet.lastFrom),
      ...placementFields(choose),
      ...packingFields(choose),
    });
  },
  merge: (choose) => {
    const packets = packetsNow();
    const kept = choose.one(packets);
    const other = choose.one(packets.filter(({ id, lotId }) => id !== kept?.id && lotId === kept?.lotId));
    if (!kept || !other) return null;
    const anyway = { keepAnyway: 'on', loseDuplicate: 'on' };
    return volunteer(mergePackets, { packetId: kept.id, otherPacketId: other.id, ...anyway });
  },
  store: (choose) => {
    const accession = choose.one(ids(`SELECT "number" FROM "Accession" ORDER BY "rowid"`));
    if (!accession) return null;
    const storedOn = addDays('2021-10-01', choose.whole(0, 1800));
    return volunteer(logCleanedLot, {
      accession,
      harvestedOn: addDays(storedOn, -30),
      isolation: 'cage',
      seedCount: String(choose.whole(500, 4000)),
      storedOn,
      ...placementFields(choose),
    });
  },
};
