import { beforeAll, describe, expect, it } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { findByCode } from '@/lib/server/queries/scanned';
import { findTrayStatus } from '@/lib/server/queries/tray-status';
import { makeLot } from '@/tests/support/create-lot';
import { createLotWithPacket, recordTest } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

beforeAll(async () => {
  await createLotWithPacket({ treatment: 'thiram' });
  await createTray({ lotNumber: 'L-2020-001', number: 'T-0301', place: 'incubator 1' });
  const { id } = await createTray({ lotNumber: 'L-2020-001', number: 'T-0302' });
  connections().bulk.prepare(`UPDATE "Tray" SET "status" = 'given-up' WHERE "id" = ?`).run(id);
  await makeLot({ lotNumber: 'T-7' });
});

describe('the label of a dish', () => {
  it('leads to its tray and says which dish it is and what the tray waits for', async () => {
    expect(await findByCode('https://elsewhere.example/t/T-0301-2')).toEqual({
      kind: 'tray',
      number: 'T-0301',
      dish: 2,
      dishes: 2,
      lotNumber: 'L-2020-001',
      accessionName: 'Skerry Winter',
      cropName: 'Leek',
      treatment: 'thiram',
      seeds: 100,
      place: 'incubator 1',
      status: 'open',
      next: { on: '2026-11-23', final: false, daysLate: 2 },
    });
  });

  it('is read as a number that is typed, and a dish that the tray does not have is none', async () => {
    expect(await findByCode('t301')).toMatchObject({ number: 'T-0301', dish: null });
    expect(await findByCode('T-0301-9')).toMatchObject({ number: 'T-0301', dish: null });
  });

  it('of a tray that was given up says so, and that nothing is to be counted', async () => {
    expect(await findByCode('T-0302')).toMatchObject({ status: 'given-up', next: null });
  });

  it('of another bank is not found, and a lot that is numbered like a test is', async () => {
    expect(await findByCode('T-9999')).toBeNull();
    expect(await findByCode('T-7')).toMatchObject({ kind: 'lot', number: 'T-7' });
  });
});

it('a test’s number is open, given up, finished without a tray, or unknown', async () => {
  const { number } = await recordTest();
  expect(await findTrayStatus('T-0301')).toBe('open');
  expect(await findTrayStatus('T-0302')).toBe('given-up');
  expect(await findTrayStatus(number)).toBe('finished');
  expect(await findTrayStatus('T-9999')).toBeNull();
});
