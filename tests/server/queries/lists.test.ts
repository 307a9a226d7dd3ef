import { beforeAll, describe, expect, it } from 'vitest';
import type { Prisma } from '@/generated/prisma/client';
import { ACCESSION_SORTS, accessionListQuery, cropListQuery, LOT_SORTS, lotListQuery } from '@/lib/schemas/list-query';
import { connections } from '@/lib/server/database/connections';
import { accessionListSql, findAccessions, suggestAccessions } from '@/lib/server/queries/accessions';
import { findCrops } from '@/lib/server/queries/crops';
import { findLots, lotListSql } from '@/lib/server/queries/lots';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const LOTS = 230;
const NAMES = ['Skerry Winter', 'Holm Yellow', 'Old Ness Long-pod', 'Brae Barley'];
const CROPS = ['Leek', 'Turnip', 'Broad bean', 'Barley'];

/** Straight into the tables that lists read: what they hold is judging's business, how it is listed is tested here. */
function fillJudgements(): void {
  const { bulk } = connections();
  bulk.pragma('foreign_keys = OFF');
  const addLot = bulk.prepare(
    `INSERT INTO "LotJudgement" ("lotId", "judgedOn", "lotNumber", "accessionId", "accessionNumber", "accessionName",
       "cropId", "cropName", "harvestedOn", "searchText", "seedsLeft", "storeId", "storeName", "viabilityMedian",
       "testDueOn", "action", "urgency", "sentence")
     VALUES (@id, '2026-11-25', @number, @accession, @accession, @name, @crop, @crop, @harvestedOn, @searchText, @seeds,
       @store, @store, @alive, @due, @action, @urgency, '')`,
  );
  const addAccession = bulk.prepare(
    `INSERT INTO "AccessionJudgement" ("accessionId", "judgedOn", "accessionNumber", "accessionName", "cropId",
       "cropName", "searchText", "lots", "seedsLeft", "viabilityMedian", "action", "urgency", "sentence")
     VALUES (@accession, '2026-11-25', @accession, @name, @crop, @crop, @searchText, 1, @seeds, @alive, @action,
       @urgency, '')`,
  );
  bulk.transaction(() => {
    for (let i = 0; i < LOTS; i += 1) {
      const name = NAMES[i % 4] as string;
      const crop = CROPS[i % 4] as string;
      const number = `L-${2010 + (i % 12)}-${String(i).padStart(3, '0')}`;
      const accession = `A-${String(i).padStart(4, '0')}`;
      const row = {
        id: `lot-${i}`,
        number,
        accession,
        name,
        crop,
        harvestedOn: `${2010 + (i % 12)}-09-01`,
        searchText: [number, accession, name, crop].join(' ').toLowerCase(),
        seeds: (i * 37) % 1000,
        store: `store-${i % 3}`,
        // every tenth lot has no forecast
        alive: i % 10 === 0 ? null : (i % 97) / 100,
        due: i % 5 === 0 ? null : `20${27 + (i % 3)}-01-01`,
        action: ['regrow', 'test-first', 'leave'][i % 3],
        urgency: (i * 7919) % 1009,
      };
      addLot.run(row);
      addAccession.run(row);
    }
  })();
}

beforeAll(fillJudgements);

const plan = (sql: Prisma.Sql): string =>
  (
    connections()
      .bulk.prepare(`EXPLAIN QUERY PLAN ${sql.sql}`)
      .all(...(sql.values as unknown[])) as { detail: string }[]
  )
    .map((step) => step.detail)
    .join('; ');

describe('list addresses', () => {
  it('takes what cannot be read as not said', () => {
    const standard = { q: '', sort: 'accession', page: 1, crop: '', store: '', action: '' };
    expect(lotListQuery.parse({})).toEqual(standard);
    expect(
      lotListQuery.parse({ sort: 'seedsLeft; DROP TABLE "Lot"', page: '-3', action: 'burn', q: 'x'.repeat(201) }),
    ).toEqual(standard);
    expect(lotListQuery.parse({ q: ['leek', 'onion'], page: '2' })).toMatchObject({ q: 'leek', page: 2 });
    expect(lotListQuery.parse({ sort: '-urgency' }).sort).toBe('-urgency');
  });
});

describe('findLots', () => {
  const find = (input: Record<string, string>) => findLots(lotListQuery.parse(input));

  it('pages fifty at a time and shows every lot exactly once, in every order', async () => {
    for (const sort of LOT_SORTS.flatMap((key) => [key, `-${key}`])) {
      const numbers: string[] = [];
      for (let page = 1; page <= 5; page += 1) {
        const list = await find({ sort, page: String(page) });
        expect(list).toMatchObject({ total: LOTS, pages: 5, page });
        numbers.push(...list.rows.map((row) => row.lotNumber));
      }
      expect(new Set(numbers).size, `order ${sort}`).toBe(LOTS);
    }
  });

  it('shows the last page when the address asks for one beyond it', async () => {
    const list = await find({ page: '99' });
    expect(list.page).toBe(5);
    expect(list.rows).toHaveLength(30);
  });

  it('orders both ways and puts lots without a forecast last either way', async () => {
    const all = async (sort: string) => {
      const pages = await Promise.all([1, 2, 3, 4, 5].map((page) => find({ sort, page: String(page) })));
      return pages.flatMap((list) => list.rows.map((row) => row.viabilityMedian));
    };
    for (const [sort, sign] of [
      ['alive', 1],
      ['-alive', -1],
    ] as const) {
      const figures = await all(sort);
      const known = figures.filter((figure) => figure !== null);
      expect(figures.slice(0, known.length)).toEqual(known.toSorted((a, b) => sign * (a - b)));
      expect(figures.slice(known.length).every((figure) => figure === null)).toBe(true);
    }
  });

  it('finds lots that have all the words, in any order and case', async () => {
    expect((await find({ q: 'WINTER skerry' })).total).toBe(58);
    expect((await find({ q: 'skerry yellow' })).total).toBe(0);
    expect((await find({ q: 'l-2010-000' })).rows.map((row) => row.lotNumber)).toEqual(['L-2010-000']);
  });

  it('takes percent and underscore in a search for themselves', async () => {
    expect((await find({ q: '%' })).total).toBe(0);
    expect((await find({ q: '_' })).total).toBe(0);
    expect((await find({ q: "' OR 1=1 --" })).total).toBe(0);
  });

  it('filters by crop, store and judgement together', async () => {
    const list = await find({ crop: 'Leek', store: 'store-0', action: 'regrow' });
    expect(list.total).toBe(20); // every twelfth of 230
    expect(list.rows.every((row) => row.cropName === 'Leek' && row.action === 'regrow')).toBe(true);
  });

  it('reads a page from an index without sorting the table, in every order but that by store', () => {
    for (const sort of LOT_SORTS.filter((key) => key !== 'store').flatMap((key) => [key, `-${key}`])) {
      const steps = plan(lotListSql(lotListQuery.parse({ sort }), 0));
      expect(steps, `order ${sort}`).toContain('USING INDEX');
      expect(steps, `order ${sort}`).not.toContain('TEMP B-TREE');
    }
  });
});

describe('findAccessions', () => {
  const find = (input: Record<string, string>) => findAccessions(accessionListQuery.parse(input));

  it('searches, filters and counts', async () => {
    expect((await find({})).total).toBe(LOTS);
    expect((await find({ q: 'holm', action: 'leave' })).rows[0]).toMatchObject({
      accessionName: 'Holm Yellow',
      action: 'leave',
    });
  });

  it('reads a page from an index without sorting the table, in the orders by name, number, crop and urgency', () => {
    const indexed = ['number', 'accession', 'crop', 'urgency'];
    expect(ACCESSION_SORTS).toEqual(expect.arrayContaining(indexed));
    for (const sort of indexed.flatMap((key) => [key, `-${key}`])) {
      const steps = plan(accessionListSql(accessionListQuery.parse({ sort }), 0));
      expect(steps, `order ${sort}`).not.toContain('TEMP B-TREE');
    }
  });

  it('offers accessions as somebody types, those that begin with it first', async () => {
    const offered = await suggestAccessions('a-000');
    expect(offered).toHaveLength(10);
    expect(offered[0]).toEqual({ number: 'A-0003', name: 'Brae Barley', cropName: 'Barley' });
    expect(await suggestAccessions('  ')).toEqual([]);
    expect(await suggestAccessions('skerry')).toHaveLength(20);
  });
});

describe('findCrops', () => {
  it('finds a crop by its scientific name and counts what is kept of it', async () => {
    const list = await findCrops(cropListQuery.parse({ q: 'allium cepa' }));
    expect(list.rows).toEqual([expect.objectContaining({ name: 'Onion', family: 'Amaryllidaceae', accessions: 0 })]);
  });

  it('orders by any column', async () => {
    for (const sort of ['name', '-name', 'scientific', '-family', 'accessions', '-accessions']) {
      expect((await findCrops(cropListQuery.parse({ sort }))).rows).toHaveLength(50);
    }
  });
});
