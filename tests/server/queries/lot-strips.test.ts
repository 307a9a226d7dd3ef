import { expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { getLotPage } from '@/lib/server/queries/lot-page';
import { makeAccession } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { logReadings } from '@/tests/support/log-readings';
import { useTestBank } from '@/tests/support/test-bank';

const TODAY = '2026-11-25';
useTestBank({ today: TODAY });

it('draws the very ageing that the forecast uses, with the viability that the page tells', async () => {
  const fridge = await makeStore({ name: 'Fridge A' });
  const box = await makeStore({ name: 'Box 1', kind: 'box', parentId: fridge.id });
  const days = Array.from({ length: 300 }, (_, index) => toEpochDay('2026-01-01') + index);
  logReadings(
    fridge.id,
    days.map((day) => [day * 86_400, day % 30 < 3 ? 19 : 4] as const),
  );
  const accession = (await makeAccession()).number;
  const lot = { accession, lotNumber: 'L-2020-001', harvestedOn: '2020-09-15', storedOn: '2020-10-05' };
  await makeLot({ ...lot, storeId: box.id });
  const page = await getLotPage('L-2020-001', {});
  const ageing = page?.evaluated.ageing;
  if (!page || !ageing?.ok) throw new Error('no ageing');
  const [strip] = page.strips;
  expect(strip?.line.at(-1)?.probits).toBe(ageing.probitsAt(toEpochDay(TODAY)));
  expect(strip?.stays.at(-1)?.viability).toBe(page.evaluated.judgement.viabilityNow?.median);
  expect(strip?.stays).toMatchObject([
    { storeName: 'Box 1', loggedIn: 'Fridge A', fromDay: toEpochDay('2020-10-05'), toDay: toEpochDay(TODAY) },
  ]);
  expect(strip?.source).toMatchObject({ kind: 'logged', inStore: 'Fridge A', stopped: true });
});

it('has nothing to draw of seed that was stored today', async () => {
  const { number } = await createLotWithPacket({ number: 'L-2026-001', harvestedOn: '2026-11-01', filledOn: TODAY });
  expect((await getLotPage(number, {}))?.strips).toEqual([]);
});
