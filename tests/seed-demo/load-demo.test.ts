/** The whole demo, loaded through the commands into a real database. */
import { execFileSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { beforeAll, describe, expect, test } from 'vitest';
import { daysBetween } from '@/lib/domain/calendar/calendar-date';
import { type BenchDish, dishStates } from '@/lib/domain/germination/bench/dish-state';
import type { TrayCount } from '@/lib/domain/germination/bench/tray-count';
import { trayResult } from '@/lib/domain/germination/bench/tray-result';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { fitStorageExperiment } from '@/lib/domain/longevity/storage-experiment/fit-storage-experiment';
import type { StorageRow } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { parseSequentialPlan } from '@/lib/schemas/sequential-plan';
import { connections } from '@/lib/server/database/connections';
import { judgeLots } from '@/lib/server/judging/judge-lots';
import { findDryingRuns } from '@/lib/server/queries/drying-runs';
import { getLotMoisture } from '@/lib/server/queries/lot-moisture';
import { findTraysUnderWay } from '@/lib/server/queries/trays-under-way';
import { loadDemo } from '@/seed-demo/load-demo';
import { ONION_EXPERIMENT } from '@/seed-demo/scenarios/storage-experiment';
import { useTestBank } from '../support/test-bank';

const TODAY = '2026-11-25';
const SLOW_MACHINE_MS = 180_000;

/** What a steward can see, without ids and the moments of writing. */
const SEEN = {
  bank: `SELECT "name", "sowingMonth", "emergence" FROM "Bank"`,
  stores: `SELECT s."name", s."kind", s."targetTemperatureC", s."targetRelativeHumidity", p."name" AS "inside", s."climateVersion"
    FROM "Store" s LEFT JOIN "Store" p ON p."id" = s."parentId" ORDER BY s."name"`,
  readings: `SELECT s."name", COUNT(*) AS "readings", SUM("temperatureC") AS "warmth", SUM("relativeHumidity") AS "damp"
    FROM "Reading" r JOIN "Store" s ON s."id" = r."storeId" GROUP BY s."name" ORDER BY s."name"`,
  accessions: `SELECT a."number", a."name", c."name" AS "crop", a."donor", a."acquiredOn" FROM "Accession" a
    JOIN "Crop" c ON c."id" = a."cropId" ORDER BY a."number"`,
  lots: `SELECT l."number", a."number" AS "accession", l."harvestedOn", l."generation", l."isolation", l."cleanWeightG",
    l."thousandSeedWeightG", l."treatment" FROM "Lot" l JOIN "Accession" a ON a."id" = l."accessionId" ORDER BY l."number"`,
  placements: `SELECT p."number", s."name" AS "store", pl."from", pl."container", pl."moisturePercent" FROM "Placement" pl
    JOIN "Packet" p ON p."id" = pl."packetId" JOIN "Store" s ON s."id" = pl."storeId" ORDER BY p."number", pl."from", s."name"`,
  movements: `SELECT p."number", p."role", m."on", m."reason", m."seeds", m."note" FROM "Movement" m
    JOIN "Packet" p ON p."id" = m."packetId" ORDER BY p."number", m."on", m."reason", m."seeds", m."note"`,
  care: `SELECT p."number", c."on", c."what", c."desiccant", c."changeDueOn" FROM "PacketCare" c
    JOIN "Packet" p ON p."id" = c."packetId" ORDER BY p."number", c."on", c."id"`,
  tests: `SELECT t."number", l."number" AS "lot", t."setOn", t."finishedOn", r."position", r."seeds", r."normal",
    r."abnormal", r."hard", r."fresh", r."dead", c."number" AS "corrects" FROM "GerminationTest" t
    JOIN "Lot" l ON l."id" = t."lotId" JOIN "Replicate" r ON r."testId" = t."id"
    LEFT JOIN "GerminationTest" c ON c."id" = t."correctsId" ORDER BY t."number", r."position"`,
  trays: `SELECT t."number", l."number" AS "lot", t."setOn", t."firstCountOn", t."finalCountOn", t."countEveryDays",
    t."temperatures", t."substrate", t."place", t."status", t."closedOn", d."position", d."seeds", c."on", c."normal",
    c."abnormal", c."hard", c."fresh", c."dead" FROM "Tray" t JOIN "Lot" l ON l."id" = t."lotId"
    JOIN "TrayDish" d ON d."trayId" = t."id" LEFT JOIN "TrayCount" c ON c."dishId" = d."id"
    ORDER BY t."number", d."position", c."on"`,
  trayNotes: `SELECT t."number", n."on", n."dish", n."text" FROM "TrayNote" n JOIN "Tray" t ON t."id" = n."trayId"
    ORDER BY t."number", n."on", n."dish"`,
  decisions: `SELECT a."number", d."season", d."action", d."reason", l."number" AS "lot" FROM "RegrowDecision" d
    JOIN "Accession" a ON a."id" = d."accessionId" LEFT JOIN "Lot" l ON l."id" = d."lotId" ORDER BY a."number", d."season"`,
  requests: `SELECT q."number", q."recipient", q."askedOn", q."status", q."settledOn", l."number" AS "lot", s."seeds",
    a."sharing" FROM "SharingRequest" q JOIN "SharingLine" s ON s."requestId" = q."id" JOIN "Lot" l ON l."id" = s."lotId"
    JOIN "Accession" a ON a."id" = s."accessionId" ORDER BY q."number", s."position"`,
  moisture: `SELECT t."number", l."number" AS "lot", p."number" AS "packet", t."testedOn", t."method", t."moisturePercent"
    FROM "MoistureTest" t JOIN "Lot" l ON l."id" = t."lotId" LEFT JOIN "Packet" p ON p."id" = t."packetId" ORDER BY t."number"`,
  drying: `SELECT r."number", l."number" AS "lot", r."startedOn", r."endedOn", w."atEpochSeconds", w."weightG" FROM "DryingRun" r
    JOIN "Lot" l ON l."id" = r."lotId" JOIN "DryingWeighing" w ON w."runId" = r."id" ORDER BY r."number", w."atEpochSeconds"`,
  experiments: `SELECT e."name", e."species", r."position", r."lot", r."moisturePercent", r."temperatureC", r."days", r."sown",
    r."germinated" FROM "StorageExperiment" e JOIN "StorageExperimentRow" r ON r."experimentId" = e."id"
    ORDER BY e."name", r."position"`,
};

const rows = <Row>(sql: string) => connections().bulk.prepare<[], Row>(sql).all();
const one = (sql: string) => (rows<{ n: number }>(sql)[0] as { n: number }).n;
const seen = () => Object.fromEntries(Object.entries(SEEN).map(([part, sql]) => [part, rows(sql)]));

let firstLoad: Record<string, unknown[]> = {};

describe('the demo collection', () => {
  const bank = useTestBank({ today: TODAY });
  let made = { accessions: 0, lots: 0, tests: 0 };

  beforeAll(async () => {
    made = await loadDemo(TODAY);
    firstLoad = seen();
  }, SLOW_MACHINE_MS);

  test('has about forty accessions, a hundred and twenty lots and two hundred tests of fourteen crops', () => {
    expect(made.accessions).toBe(one(`SELECT COUNT(*) AS n FROM "Accession"`));
    expect(made.lots).toBe(one(`SELECT COUNT(*) AS n FROM "Lot"`));
    expect(made.tests).toBe(one(`SELECT COUNT(*) AS n FROM "GerminationTest"`));
    expect(Math.abs(made.accessions - 40)).toBeLessThanOrEqual(3);
    expect(Math.abs(made.lots - 120)).toBeLessThanOrEqual(8);
    expect(made.tests).toBeGreaterThan(200);
    expect(one(`SELECT COUNT(DISTINCT "cropId") AS n FROM "Accession"`)).toBe(14);
    expect(one(`SELECT COUNT(*) AS n FROM "Reading"`)).toBeLessThanOrEqual(150_000);
  });

  test('no ledger was ever below nothing, on any day', () => {
    const ledger = rows<{ packetId: string; seeds: number }>(
      `SELECT "packetId", "seeds" FROM "Movement" ORDER BY "packetId", "on", "seeds" > 0 DESC`,
    );
    const balance = new Map<string, number>();
    for (const { packetId, seeds } of ledger) {
      const after = (balance.get(packetId) ?? 0) + seeds;
      expect(after).toBeGreaterThanOrEqual(0);
      balance.set(packetId, after);
    }
    expect(balance.size).toBeGreaterThan(120);
  });

  test('every kind of thing that a screen can show is there', () => {
    const reasons = rows<{ reason: string }>(`SELECT DISTINCT "reason" FROM "Movement" ORDER BY 1`).map(
      (row) => row.reason,
    );
    expect(reasons).toEqual(['deposit', 'loss', 'sharing', 'sowing', 'split', 'test']);
    expect(one(`SELECT COUNT(*) AS n FROM "Packet" WHERE "role" = 'safety-duplicate'`)).toBeGreaterThan(15);
    expect(one(`SELECT COUNT(*) AS n FROM "Packet" WHERE "role" = 'base'`)).toBe(1);
    expect(one(`SELECT COUNT(*) AS n FROM "Store" WHERE "kind" = 'partner-bank'`)).toBe(1);
    expect(one(`SELECT COUNT(*) AS n FROM "PacketCare" WHERE "what" = 'desiccant'`)).toBe(2);
    expect(one(`SELECT COUNT(*) AS n FROM "PacketCare" WHERE "what" = 'opened'`)).toBe(1);
    expect(one(`SELECT COUNT(*) AS n FROM "GerminationTest" WHERE "correctsId" IS NOT NULL`)).toBe(1);
    expect(one(`SELECT COUNT(*) AS n FROM "Lot" WHERE "treatment" IS NOT NULL`)).toBe(1);
    expect(one(`SELECT COUNT(*) AS n FROM "Replicate" WHERE "hard" > 5`)).toBeGreaterThan(5);
    expect(one(`SELECT COUNT(*) AS n FROM "Store" WHERE "parentId" IS NOT NULL`)).toBe(3);
    expect(one(`SELECT COUNT(*) AS n FROM "StorePhase" WHERE "from" > '0001-01-01'`)).toBe(1);
    expect(one(`SELECT COUNT(DISTINCT "storeId") AS n FROM "Reading"`)).toBe(5);
    expect(one(`SELECT COUNT(*) AS n FROM "Store" WHERE "climateVersion" > 0`)).toBe(5);
    expect(one(`SELECT COUNT(DISTINCT "season") AS n FROM "RegrowDecision"`)).toBe(3);
  });

  test('one request was sent out of three packets, one is open, and not every accession may be shared', () => {
    expect(rows(`SELECT "status" FROM "SharingRequest" ORDER BY "number"`)).toEqual([
      { status: 'sent' },
      { status: 'open' },
    ]);
    expect(one(`SELECT COUNT(*) AS n FROM "Movement" WHERE "requestId" IS NOT NULL AND "reason" = 'sharing'`)).toBe(3);
    expect(one(`SELECT COUNT(DISTINCT "sharing") AS n FROM "Accession"`)).toBe(3);
  });

  test('one jar may leak, one oven test is to be repeated, and one tray is still drying', async () => {
    const lots = rows<{ number: string }>(
      `SELECT DISTINCT l."number" FROM "MoistureTest" t JOIN "Lot" l ON l."id" = t."lotId"`,
    );
    const found = await Promise.all(lots.map(({ number }) => getLotMoisture(number)));
    expect(found.flatMap((lot) => lot?.packets ?? []).filter(({ doubt }) => doubt !== null)).toHaveLength(1);
    const verdicts = found.flatMap((lot) => lot?.tests ?? []).map(({ oven }) => oven?.verdict);
    expect(verdicts.filter((verdict) => verdict !== undefined).sort()).toEqual(['agree', 'repeat']);
    const [running, ended] = [
      await findDryingRuns({ ended: false, page: 1 }),
      await findDryingRuns({ ended: true, page: 1 }),
    ];
    expect(running.rows.map(({ progress }) => progress.ok && progress.verdict.kind)).toEqual(['on-the-way']);
    expect(ended.rows.map(({ progress }) => progress.ok && progress.verdict.kind)).toEqual(['reached']);
  });

  test('trays stand at three temperatures: one is late, others are due today, one for the last time', () => {
    const trays = findTraysUnderWay();
    expect(new Set(trays.map(({ temperatures }) => temperatures)).size).toBe(3);
    expect(new Set(trays.map(({ place }) => place)).size).toBe(3);
    const waits = trays.map(({ accessionName, next, lastCountedOn }) => [
      accessionName,
      daysBetween(TODAY, next.on),
      next.daysLate,
      next.final,
      lastCountedOn !== null,
    ]);
    expect(waits.sort()).toEqual([
      ['Boathouse', 2, 0, false, true],
      ['Brannasay Black', 8, 0, false, false],
      ['Lambing', 0, 0, false, false],
      ['Northbie Tall', 0, 0, false, true],
      ['Northbie Winter', -2, 2, false, false],
      ['Old Manse Bronze', 0, 0, true, true],
    ]);
    for (const { disagreements, toClose } of trays) expect([disagreements, toClose]).toEqual([0, false]);
  });

  test('every tray took its seed out of its packet on the day it was set', () => {
    const trays = rows<{ number: string; taken: number; set: number; on: string; setOn: string }>(
      `SELECT t."number", -m."seeds" AS "taken", m."on", t."setOn",
         (SELECT SUM("seeds") FROM "TrayDish" WHERE "trayId" = t."id") AS "set"
       FROM "Tray" t JOIN "Movement" m ON m."id" = t."withdrawalId" AND m."packetId" = t."packetId"`,
    );
    expect(trays).toHaveLength(one(`SELECT COUNT(*) AS n FROM "Tray"`));
    for (const { taken, set, on, setOn } of trays) expect([taken, on]).toEqual([set, setOn]);
  });

  test('the tests of closed trays are what their counts add up to', () => {
    const closed = rows<{ id: string; testId: string; finishedOn: string }>(
      `SELECT t."id", g."id" AS "testId", g."finishedOn" FROM "Tray" t JOIN "GerminationTest" g ON g."trayId" = t."id"
       WHERE t."status" = 'closed' AND g."number" = t."number"`,
    );
    expect(closed).toHaveLength(2);
    for (const { id, testId, finishedOn } of closed) {
      const of = (table: string, key: string, order: string) =>
        rows<never>(
          `SELECT * FROM "${table}" WHERE "${key}" = '${key === 'trayId' ? id : testId}' ORDER BY "${order}"`,
        );
      const dishes: BenchDish[] = of('TrayDish', 'trayId', 'position');
      const counts = of('TrayCount', 'trayId', 'id').map(
        (row: Omit<TrayCount, 'found' | 'replaces'> & ClassCounts) => ({
          ...row,
          found: row,
          replaces: [],
        }),
      );
      const result = trayResult(dishStates(dishes, counts));
      expect(result.finishedOn).toBe(finishedOn);
      expect(of('Replicate', 'testId', 'position')).toMatchObject(result.replicates);
    }
  });

  test('hard seed was found at the last count, with notes; and a test in groups is not clear after its first', () => {
    expect(one(`SELECT SUM("hard") AS n FROM "TrayCount"`)).toBeGreaterThan(10);
    expect(one(`SELECT COUNT(*) AS n FROM "TrayNote"`)).toBeGreaterThanOrEqual(3);
    const [group, another] = rows<{ sequentialPlan: string; normal: number }>(
      `SELECT t."sequentialPlan", (SELECT SUM("normal" + "hard" + "fresh") FROM "TrayCount" WHERE "trayId" = t."id") AS "normal"
       FROM "Tray" t WHERE t."sequentialPlan" IS NOT NULL`,
    );
    expect(another).toBeUndefined();
    const [look] = parseSequentialPlan(group?.sequentialPlan ?? null)?.looks ?? [];
    expect(group?.normal).toBeGreaterThan(look?.regrowAtMost ?? 40);
    expect(group?.normal).toBeLessThan(look?.keepAtLeast ?? 0);
  });

  test('the leeks in the fridge fell over the summer in which it stood warm', () => {
    const shares = rows<{ setOn: string; alive: number }>(
      `SELECT t."setOn", 1.0 * SUM(r."normal" + r."fresh" + r."hard") / SUM(r."seeds") AS "alive" FROM "GerminationTest" t
       JOIN "Replicate" r ON r."testId" = t."id" JOIN "Lot" l ON l."id" = t."lotId"
       JOIN "Accession" a ON a."id" = l."accessionId" WHERE a."name" = 'Harbourmaster' AND l."harvestedOn" < '2020'
       GROUP BY t."id" ORDER BY t."setOn"`,
    );
    const before = shares.filter((row) => row.setOn < '2023-07').at(-1)?.alive ?? 0;
    const after = shares.find((row) => row.setOn > '2023-09')?.alive ?? 1;
    expect(before).toBeGreaterThan(0.8);
    expect(after).toBeLessThan(before - 0.2);
  });

  test('the school’s onions give constants within three standard errors of what was true of them', () => {
    const fit = fitStorageExperiment(
      rows<StorageRow>(
        `SELECT "lot", "moisturePercent", "temperatureC", "days", "sown", "germinated" FROM "StorageExperimentRow"`,
      ),
    );
    if (!fit.ok) throw new Error(fit.message);
    expect(fit.conditions).toBe(9);
    for (const key of ['KE', 'CW'] as const) {
      expect(Math.abs(fit.constants[key] - ONION_EXPERIMENT.truth[key]) / fit.standardErrors[key]).toBeLessThan(3);
    }
  });

  test('leaves the connections as careful as they were', () => {
    expect(connections().bulk.pragma('synchronous', { simple: true })).toBe(2);
  });

  test('is refused over a collection, and nothing is written', async () => {
    const before = one(`SELECT COUNT(*) AS n FROM "AuditEntry"`);
    await expect(loadDemo(TODAY)).rejects.toThrow('already holds a collection');
    expect(one(`SELECT COUNT(*) AS n FROM "AuditEntry"`)).toBe(before);
  });

  test('its command line refuses a folder that holds a collection', () => {
    expect(existsSync(bank.file)).toBe(true);
    const run = () =>
      execFileSync(process.execPath, ['--conditions=react-server', '--import', 'tsx', 'seed-demo/index.ts'], {
        env: { ...process.env, DATA_DIR: bank.directory },
        encoding: 'utf8',
        stdio: 'pipe',
      });
    expect(run).toThrow(/already holds a collection/);
  });

  describe('judged', () => {
    beforeAll(() => judgeLots(connections().bulk, 'all', TODAY), SLOW_MACHINE_MS);

    const accession = (name: string) =>
      rows<{ action: string; rescue: number; sentence: string; seedsLeft: number; chanceBelow: number | null }>(
        `SELECT * FROM "AccessionJudgement" WHERE "accessionName" = '${name.replaceAll("'", "''")}'`,
      )[0];
    const lotsOf = (name: string) =>
      rows<{ harvestedOn: string; viabilityMedian: number | null; rescue: number; noForecastBecause: string | null }>(
        `SELECT * FROM "LotJudgement" WHERE "accessionName" = '${name.replaceAll("'", "''")}' ORDER BY "harvestedOn"`,
      );

    test('every lot and accession has its judgement', () => {
      expect(one(`SELECT COUNT(*) AS n FROM "LotJudgement" WHERE "judgedOn" = '${TODAY}'`)).toBe(made.lots);
      expect(one(`SELECT COUNT(*) AS n FROM "AccessionJudgement"`)).toBe(made.accessions);
    });

    test('each action is there, for accessions as for lots', () => {
      for (const table of ['LotJudgement', 'AccessionJudgement']) {
        for (const action of ['regrow', 'test-first', 'leave']) {
          expect(one(`SELECT COUNT(*) AS n FROM "${table}" WHERE "action" = '${action}'`), action).toBeGreaterThan(0);
        }
        expect(one(`SELECT COUNT(*) AS n FROM "${table}" WHERE "rescue"`), table).toBeGreaterThan(0);
      }
    });

    test('few seeds of a lone old leek call for a rescue', () => {
      expect(accession('Blue Skerry')).toMatchObject({ action: 'regrow', rescue: 1 });
    });

    test('kale that everybody asks for is running out', () => {
      expect(accession('Ebb Shore')).toMatchObject({ action: 'regrow', rescue: 0 });
      expect(accession('Ebb Shore')?.sentence).toContain('running out');
    });

    test('onions that nobody counted, and carrots of which two counts disagree, are tested first', () => {
      expect(accession('Kirk Geo Pickler')).toMatchObject({ action: 'test-first' });
      expect(accession('Kirk Geo Pickler')?.sentence).toContain('Never tested');
      expect(accession('Ferry Purple')).toMatchObject({ action: 'test-first' });
      expect(accession('Ferry Purple')?.sentence).toContain('disagree');
    });

    test('an old dying lot beside good young ones is no emergency', () => {
      const [old, ...young] = lotsOf('Long Ayre Red');
      expect(old?.viabilityMedian ?? 1).toBeLessThan(0.1);
      for (const lot of young) expect(lot.viabilityMedian ?? 0).toBeGreaterThan(0.85);
      expect(accession('Long Ayre Red')).toMatchObject({ action: 'leave' });
    });

    test('barley in jars declines slowly, the older the lower', () => {
      const tested = lotsOf('Ramsgarth Six-row').slice(0, -1);
      const medians = tested.map((lot) => lot.viabilityMedian ?? 0);
      expect(medians.length).toBe(5);
      expect(medians[0] ?? 0).toBeGreaterThan(0.6);
      expect((medians[4] ?? 0) - (medians[0] ?? 1)).toBeGreaterThan(0.08);
    });

    test('where no forecast holds the reason is given: jarred too moist, or open in a damp loft', () => {
      const reasons = rows<{ because: string }>(
        `SELECT "noForecastBecause" AS "because" FROM "LotJudgement" WHERE "noForecastBecause" IS NOT NULL`,
      ).map((row) => row.because);
      expect(reasons.some((reason) => reason.includes('16.4 % moisture'))).toBe(true);
      expect(reasons.some((reason) => reason.includes('open container'))).toBe(true);
    });
  });
});

describe('the same day', () => {
  useTestBank({ today: TODAY });

  test(
    'gives the same rows again',
    async () => {
      await loadDemo(TODAY);
      expect(Object.values(firstLoad).flat().length).toBeGreaterThan(1500);
      const again = seen();
      for (const part of Object.keys(SEEN)) expect(again[part], part).toEqual(firstLoad[part]);
    },
    SLOW_MACHINE_MS,
  );
});

describe('another day', () => {
  useTestBank({ today: '2028-02-29' });

  test(
    'is just as fresh',
    async () => {
      const made = await loadDemo('2028-02-29');
      expect(made.lots).toBe((firstLoad.lots ?? []).length);
      expect(one(`SELECT COUNT(*) AS n FROM "Lot" WHERE "harvestedOn" > '2027-07-01'`)).toBeGreaterThan(5);
    },
    SLOW_MACHINE_MS,
  );

  test('other than the commands’ own today is refused', async () => {
    await expect(loadDemo('2027-01-01')).rejects.toThrow(RangeError);
  });
});
