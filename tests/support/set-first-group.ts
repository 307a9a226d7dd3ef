import { createLotWithPacket } from './create-tested-lot';
import { setTraysOf, trayNumbered, trayRow } from './set-tray';

interface FirstGroup {
  lotNumber?: string;
  seeds?: number;
  setOn?: string;
}

/** The first group of 40 of a test in groups: stops to keep at 37 alive, to regrow at 31; see groupPlan(0.85, 400). */
export async function setFirstGroup({ lotNumber = 'L-2020-001', seeds = 1000, setOn = '2026-11-01' }: FirstGroup = {}) {
  const { packetId, lotId } = await createLotWithPacket({ number: lotNumber, seeds });
  const plan = { size: 'groups', line: '0.85', mostSeeds: '400', dishes: '', seedsEach: '', countEveryDays: '4' };
  const { numbers } = await setTraysOf(
    [trayRow({ lot: lotNumber, seedFrom: `packet:${packetId}`, prechillDays: '2', ...plan })],
    { setOn, place: 'incubator 2' },
  );
  const tray = await trayNumbered(numbers[0] ?? '');
  return { packetId, lotId, seriesId: tray.seriesId, number: tray.number };
}
