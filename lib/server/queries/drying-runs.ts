import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { lowMoistureLimitPercent } from '@/lib/domain/longevity/low-moisture-limit';
import { balanceStep } from '@/lib/domain/moisture/balance-step';
import { type DryingPace, dryingTooFast } from '@/lib/domain/moisture/drying-pace';
import { type DryingProgress, dryingProgress } from '@/lib/domain/moisture/drying-progress';
import { type DryingWeights, dryingWeights } from '@/lib/domain/moisture/drying-weights';
import { connections, reader } from '../database/connections';
import { loadCropJudging } from '../judging/load-crop-judging';
import { localDate, nowEpochSeconds, startOfLocalDay } from '../local-time';
import { findHistory, type HistoryLine } from './history';
import { type ListPage, PAGE_SIZE, pageOf } from './list-page';

/** A weighing that stands. Hours are counted from the midnight, by the seed room's clock, before the run's first one. */
export interface RunWeighing {
  id: string;
  atEpochSeconds: number;
  hours: number;
  /** with the tray */
  weightG: number;
}

export interface DryingRunRow {
  id: string;
  number: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  packetNumber: string | null;
  storeName: string | null;
  dryingWith: string | null;
  startedOn: string;
  endedOn: string | null;
  startMoisturePercent: number;
  moistureTestNumber: string | null;
  targetMoisturePercent: number;
  tareG: number;
  weighings: RunWeighing[];
  /** the day whose midnight is hour 0 */
  hourZero: string;
  /** this moment on the same clock */
  nowHours: number;
  /** smallest step of the balance, grams */
  stepG: number;
  progress: DryingProgress;
}

export interface DryingRunDetail extends DryingRunRow {
  notes: string | null;
  treatment: string | null;
  /** null while the weighings contradict the moisture at the start */
  picture: DryingWeights | null;
  /** null where it dries no faster than it should */
  tooFast: DryingPace | null;
  /** where drying no longer helps, percent of fresh weight; null where the crop has no constants */
  lowestPercent: number | null;
  history: HistoryLine[];
}

const selectRun = {
  id: true,
  number: true,
  startedOn: true,
  endedOn: true,
  dryingWith: true,
  startMoisturePercent: true,
  targetMoisturePercent: true,
  tareG: true,
  notes: true,
  packet: { select: { number: true } },
  store: { select: { name: true } },
  moistureTest: { select: { number: true } },
  lot: {
    select: {
      number: true,
      treatment: true,
      accession: { select: { name: true, cropId: true, crop: { select: { name: true, family: true } } } },
    },
  },
  weighings: {
    where: { correctedBy: null },
    orderBy: { atEpochSeconds: 'asc' },
    select: { id: true, atEpochSeconds: true, weightG: true },
  },
} satisfies Prisma.DryingRunSelect;

type SelectedRun = Prisma.DryingRunGetPayload<{ select: typeof selectRun }>;

/**
 * Drying runs with where each stands, newest first: one query with its weighings, however many runs.
 *
 * @param ended  those that have ended, or those that run
 * @param page   from 1
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export async function findDryingRuns({
  ended,
  page: asked,
}: {
  ended: boolean;
  page: number;
}): Promise<ListPage<DryingRunRow>> {
  const wanted = { endedOn: ended ? { not: null } : null };
  const total = await reader().dryingRun.count({ where: wanted });
  const { page, pages, offset } = pageOf(asked, total);
  const runs = await reader().dryingRun.findMany({
    where: wanted,
    orderBy: ended ? [{ endedOn: 'desc' }, { id: 'desc' }] : [{ startedOn: 'desc' }, { id: 'desc' }],
    skip: offset,
    take: PAGE_SIZE,
    select: selectRun,
  });
  return { rows: runs.map(asRow), total, page, pages };
}

/**
 * One drying run by its number.
 *
 * @returns null when there is no such run
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export async function getDryingRun(number: string): Promise<DryingRunDetail | null> {
  const run = await reader().dryingRun.findUnique({ where: { number }, select: selectRun });
  if (!run) return null;
  const row = asRow(run);
  const alone = seedAlone(row);
  const { cropId, crop } = run.lot.accession;
  const [judging] = loadCropJudging(connections().rows, [cropId]).values();
  return {
    ...row,
    notes: run.notes,
    treatment: run.lot.treatment,
    picture: row.progress.ok ? dryingWeights(row.progress, alone, run.targetMoisturePercent, run.tareG) : null,
    tooFast: dryingTooFast({
      weighings: alone,
      startMoisturePercent: run.startMoisturePercent,
      family: crop.family,
    }),
    lowestPercent: judging?.seed ? lowMoistureLimitPercent(judging.seed) : null,
    history: await findHistory([{ entity: 'drying run', ids: [run.id] }]),
  };
}

const selectWeighing = {
  id: true,
  weightG: true,
  atEpochSeconds: true,
  run: { select: { number: true } },
} satisfies Prisma.DryingWeighingSelect;

/** A weighing to be corrected, with its run; null when there is none or it was corrected since. */
export const getWeighing = (id: string) =>
  reader().dryingWeighing.findFirst({ where: { id, correctedBy: null }, select: selectWeighing });

/** The last weighing of a run: the one most likely to be put right. */
export const getLastWeighing = (runNumber: string) =>
  reader().dryingWeighing.findFirst({
    where: { run: { number: runNumber }, correctedBy: null },
    orderBy: { atEpochSeconds: 'desc' },
    select: selectWeighing,
  });

const seedAlone = ({ weighings, tareG }: Pick<DryingRunRow, 'weighings' | 'tareG'>) =>
  weighings.map(({ hours, weightG }) => ({ hours, weightG: weightG - tareG }));

function asRow(run: SelectedRun): DryingRunRow {
  const { lot, packet, store, moistureTest, weighings, tareG, startMoisturePercent, targetMoisturePercent } = run;
  const first = weighings[0];
  if (!first) throw new Error(`drying run ${run.number} has no weighing`);
  const hourZero = localDate(first.atEpochSeconds);
  const midnight = startOfLocalDay(hourZero);
  const onClock = (epochSeconds: number) => (epochSeconds - midnight) / 3600;
  const timed = weighings.map((weighing) => ({ ...weighing, hours: onClock(weighing.atEpochSeconds) }));
  const stepG = balanceStep([tareG, ...weighings.map(({ weightG }) => weightG)]);
  return {
    id: run.id,
    number: run.number,
    lotNumber: lot.number,
    accessionName: lot.accession.name,
    cropName: lot.accession.crop.name,
    packetNumber: packet?.number ?? null,
    storeName: store?.name ?? null,
    dryingWith: run.dryingWith,
    startedOn: run.startedOn,
    endedOn: run.endedOn,
    startMoisturePercent,
    moistureTestNumber: moistureTest?.number ?? null,
    targetMoisturePercent,
    tareG,
    weighings: timed,
    hourZero,
    nowHours: onClock(nowEpochSeconds()),
    stepG,
    progress: dryingProgress({
      weighings: seedAlone({ weighings: timed, tareG }),
      startMoisturePercent,
      targetMoisturePercent,
      stepG,
    }),
  };
}
