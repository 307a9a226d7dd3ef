import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import type { RunningBench } from '@/app/bench/_store/create-bench';
import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { connections } from '@/lib/server/database/connections';
import { getBenchSnapshot } from '@/lib/server/queries/bench-snapshot';
import { type SimulatedDevice, simulatedDevice } from '@/tests/support/bench/simulated-device';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

/** More with HILUM_BENCH_RUNS=500; a long run draws others when HILUM_SEED says so. */
const RUNS = Number(process.env.HILUM_BENCH_RUNS ?? 60);
const SEED = Number(process.env.HILUM_SEED ?? 20_261_130);
const DAYS = ['2026-11-24', '2026-11-25'] as const;

useTestBank({ today: '2026-11-25' });
beforeAll(() => createLotWithPacket());

const anyPlace = fc.record({ dish: fc.nat(2), on: fc.constantFrom(...DAYS) });
const anyFound = fc.option(
  fc
    .record({ normal: fc.nat(9), abnormal: fc.nat(2), dead: fc.nat(1) })
    .map((found) => ({ ...NOTHING_FOUND, ...found })),
  { nil: null, freq: 6 },
);
const anyEntry = fc.record({ place: anyPlace, found: anyFound });
const anyAct = fc.oneof(
  { weight: 10, arbitrary: fc.record({ kind: fc.constant('enter' as const), entry: anyEntry }) },
  {
    weight: 2,
    arbitrary: fc.record({
      kind: fc.constant('together' as const),
      entries: fc.array(anyEntry, { minLength: 2, maxLength: 3 }),
    }),
  },
  { weight: 3, arbitrary: fc.record({ kind: fc.constant('undo' as const) }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('note' as const) }) },
  { weight: 4, arbitrary: fc.record({ kind: fc.constant('synchronise' as const) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('answer lost' as const) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('enter while sending' as const), entry: anyEntry }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('reload' as const) }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('line' as const), cut: fc.boolean() }) },
  {
    weight: 1,
    arbitrary: fc.record({ kind: fc.constant('session' as const), who: fc.constantFrom(null, STEWARD, VOLUNTEER) }),
  },
);
const anyStep = fc.record({ device: fc.nat(2), tab: fc.nat(1), act: anyAct });

interface Entry {
  place: { dish: number; on: string };
  found: ClassCounts | null;
}

/** What a screen says of every dish and day, its disagreements included. */
const shownOn = (bench: RunningBench) =>
  bench.view().trays.map(({ tray, dishes }) => ({
    number: tray.number,
    days: dishes.flatMap(({ dish, days }) =>
      days.map(({ on, found, disagree, standing }) => ({
        dish: dish.position,
        on,
        found,
        disagree,
        ids: standing.map(({ id }) => id),
      })),
    ),
    notes: tray.notes.map(({ id, text }) => [id, text]),
  }));

it(
  `three phones with two tabs each agree with the server in the end, in ${RUNS} runs of taps, undos and lost connections`,
  async () => {
    const met = { kept: 0, disagreements: 0, lostAnswers: 0, sentTwice: 0 };
    await fc.assert(
      fc.asyncProperty(fc.array(anyStep, { minLength: 15, maxLength: 45, size: 'max' }), async (steps) => {
        connections().bulk.exec(`UPDATE "Tray" SET "status" = 'given-up'`);
        const tray = await createTray({ lotNumber: 'L-2020-001', dishes: [50, 50, 25], takesSeed: false });
        let clock = Date.UTC(2026, 10, 25, 8);
        // Two right clocks, one that lags behind by an hour.
        const skews = [0, 40, -3_600_000];
        const devices: SimulatedDevice[] = [];
        for (const skew of skews) {
          const now = () => clock + skew;
          devices.push(await simulatedDevice({ person: VOLUNTEER, now, localDay: () => '2026-11-25', tabs: 2 }));
        }
        for (const { tabs } of devices) await tabs[0]?.synchronise();
        await settled();

        const enter = (bench: RunningBench, { place: { dish, on }, found }: Entry) =>
          bench.enter({ trayId: tray.id, dishId: tray.dishes[dish]?.id as string, on, found });

        for (const step of steps) {
          clock += 7;
          const device = devices[step.device] as SimulatedDevice;
          const bench = device.tabs[step.tab] as RunningBench;
          const { act } = step;
          if (act.kind === 'enter') enter(bench, act.entry);
          else if (act.kind === 'together')
            bench.together(() => {
              for (const entry of act.entries) enter(bench, entry);
            });
          else if (act.kind === 'undo') bench.undo();
          else if (act.kind === 'note')
            bench.addNote({ trayId: tray.id, dish: 1, on: '2026-11-25', text: `note ${clock}` });
          else if (act.kind === 'synchronise') await bench.synchronise();
          else if (act.kind === 'answer lost') {
            device.line.answersToLose = 1;
            await bench.synchronise();
            met.lostAnswers += 1 - device.line.answersToLose;
            device.line.answersToLose = 0;
          } else if (act.kind === 'enter while sending') {
            device.line.meanwhile = () => enter(bench, act.entry);
            await bench.synchronise();
            device.line.meanwhile = null;
          } else if (act.kind === 'reload') await device.reload(step.tab);
          else if (act.kind === 'line') device.line.cut = act.cut;
          else device.line.person = act.who;
          // Now and then the next tap comes before the other tab has heard of this one.
          if (step.tab === 0) await settled();
        }

        for (const { line } of devices) Object.assign(line, { cut: false, person: VOLUNTEER });
        for (let pass = 0; pass < 2; pass += 1) for (const { tabs } of devices) await tabs[0]?.synchronise();
        await settled();

        const [ofServer] = getBenchSnapshot(VOLUNTEER).trays;
        const held = dayCounts(ofServer?.counts ?? []);
        const rows = connections()
          .rows.prepare<[string], string>(`SELECT "id" FROM "TrayCount" WHERE "trayId" = ? ORDER BY "id"`)
          .pluck()
          .all(tray.id);
        const shown = shownOn(devices[0]?.tabs[0] as RunningBench);
        for (const { tabs } of devices) {
          for (const tab of tabs) {
            expect(tab.view().waiting).toBe(0);
            expect(tab.view().refused).toEqual([]);
            expect(shownOn(tab)).toEqual(shown);
          }
        }
        expect(shown[0]?.days).toEqual(
          held
            .filter(({ found, disagree }) => found !== null || disagree)
            .map(({ dishId, on, found, disagree, standing }) => ({
              dish: tray.dishes.find(({ id }) => id === dishId)?.position,
              ...{ on, found, disagree, ids: standing.map(({ id }) => id) },
            })),
        );
        // Whatever reached the server is there, once, and nothing else.
        const sent = devices.flatMap((device) => device.sent.flatMap(({ entries }) => entries));
        const sentCounts = sent.filter(({ kind }) => kind === 'count').map(({ id }) => id);
        expect(rows).toEqual([...new Set(sentCounts)].sort());
        met.kept += rows.length;
        met.sentTwice += sentCounts.length - rows.length;
        met.disagreements += held.filter(({ disagree }) => disagree).length;
        // The last word of each phone on each dish and day has arrived as it was written.
        for (const { written } of devices) {
          const last = new Map(
            written.map((entry) => [entry.kind === 'count' ? `${entry.dishId} ${entry.on}` : entry.id, entry]),
          );
          for (const entry of last.values()) {
            if (entry.kind === 'note') expect(ofServer?.notes.find(({ id }) => id === entry.id)?.text).toBe(entry.text);
            else if (entry.found !== null || rows.includes(entry.id)) {
              expect(ofServer?.counts.find(({ id }) => id === entry.id)?.found).toEqual(entry.found);
            }
          }
        }
      }),
      { numRuns: RUNS, seed: SEED, endOnFailure: process.env.HILUM_BENCH_SHRINK === undefined },
    );
    console.info(`devices-agree ${JSON.stringify({ runs: RUNS, ...met })}`);
    // What the runs are for has come up in them.
    expect(Math.min(...Object.values(met))).toBeGreaterThan(0);
  },
  60_000 + RUNS * 2_000,
);

/** Everything that was set going without being waited for: writes, and looks of other tabs. */
const settled = () => new Promise((resolve) => setImmediate(resolve));
