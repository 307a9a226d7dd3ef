import { beforeAll, describe, expect, test } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { loadLots } from '@/lib/server/judging/load-lots';
import { loadLargeCollection } from '@/seed-demo/large-collection';
import { useTestBank } from '../support/test-bank';

const count = (sql: string) => (connections().bulk.prepare<[], { n: number }>(sql).get() as { n: number }).n;

describe('a large collection', () => {
  useTestBank({ today: '2026-11-25' });
  let made = { accessions: 0, lots: 0, tests: 0, readings: 0 };

  beforeAll(async () => {
    made = await loadLargeCollection({ lots: 600, testsPerLot: 3, stores: 4, yearsOfReadings: 0.5 });
  }, 60_000);

  test('has as many lots as asked for, three to an accession, over many crops', () => {
    expect(made).toMatchObject({ lots: 600, accessions: 200 });
    expect(count(`SELECT COUNT(*) AS n FROM "Lot"`)).toBe(600);
    expect(count(`SELECT COUNT(DISTINCT "cropId") AS n FROM "Accession"`)).toBeGreaterThan(50);
    expect(count(`SELECT COUNT(*) AS n FROM "GerminationTest"`)).toBe(made.tests);
    expect(made.tests).toBeGreaterThan(3 * 600 * 0.85);
    expect(count(`SELECT COUNT(*) AS n FROM "Reading"`)).toBe(made.readings);
    // Hourly, four stores, half a year, less the readings that were missed.
    expect(made.readings / (4 * 24 * 182.6)).toBeGreaterThan(0.99);
  });

  test('no packet is overdrawn, tests lie between storing and today, links hold', () => {
    expect(connections().bulk.pragma('foreign_key_check')).toEqual([]);
    for (const lot of loadLots(connections().bulk, 'all')) {
      for (const packet of lot.packets) expect(packet.seeds).toBeGreaterThanOrEqual(0);
      const storedOn = lot.packets[0]?.placements[0]?.from ?? '';
      expect(lot.harvestedOn < storedOn).toBe(true);
      for (const entry of lot.tests) {
        expect(entry.setOn >= storedOn && entry.finishedOn <= '2026-11-25').toBe(true);
      }
    }
  });

  test('is refused over a collection', async () => {
    await expect(loadLargeCollection({ lots: 1 })).rejects.toThrow('already holds a collection');
  });
});
