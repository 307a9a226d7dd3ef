import { addDays, daysBetween } from '@/lib/domain/calendar/calendar-date';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { recordMoistureTest } from '@/lib/server/commands/record-moisture-test';
import { recordViabilityTest } from '@/lib/server/commands/record-viability-test';
import { today } from '@/lib/server/today';
import { type Act, volunteer } from './act';
import { ids, packetsNow } from './bank-now';

/** Tests that are written down when they are finished. */
export const TEST_ACTS: Record<string, Act> = {
  test: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const finishedOn = addDays(packet.lastFrom, Math.min(daysBetween(packet.lastFrom, today()), 14));
    return volunteer(recordGerminationTest, {
      lot: packet.lotNumber,
      packetId: packet.id,
      takeSeed: 'on',
      setOn: packet.lastFrom,
      finishedOn,
      replicates: [0, 1].map(() => ({ seeds: '50', normal: String(choose.whole(25, 48)), abnormal: '1' })),
    });
  },
  moisture: (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    return volunteer(recordMoistureTest, {
      lot: packet.lotNumber,
      packetId: packet.id,
      testedOn: packet.lastFrom,
      method: 'meter',
      moisturePercent: String(choose.whole(5, 9)),
      takeSeed: 'on',
      amount: String(choose.whole(1, 40)),
      unit: 'seeds',
    });
  },
  'stain or cut': (choose) => {
    const packet = choose.one(packetsNow());
    if (!packet) return null;
    const [trayId] = ids(`SELECT "id" FROM "Tray" WHERE "lotId" = '${packet.lotId}' ORDER BY "rowid" DESC LIMIT 1`);
    const seed =
      trayId !== undefined && choose.whole(0, 2) === 0 ? { trayId } : { packetId: packet.id, takeSeed: 'on' };
    const counts = choose.one([
      { kind: 'tetrazolium', stainedNormally: choose.whole(0, 9), unstained: '1' },
      { kind: 'cut', firm: choose.whole(0, 9), empty: '1' },
    ]);
    return volunteer(recordViabilityTest, { lot: packet.lotNumber, testedOn: today(), ...seed, ...counts });
  },
};
