import type { Prisma } from '@/generated/prisma/client';
import { targetWeight } from '@/lib/domain/moisture/drying';
import { notFound } from '../app-error';
import { fieldError } from './field-error';

export type DryingRunInHand = Awaited<ReturnType<typeof dryingRunInHand>>;

/** Seed gains little in damp air; a tray that weighs this much more than at the start is another tray. */
const MOST_TIMES_START = 1.1;

/**
 * A drying run about to be changed, with the weighings that stand, earliest first, read in the transaction that
 * changes it.
 *
 * @throws AppError 'not-found'
 */
export async function dryingRunInHand(tx: Prisma.TransactionClient, runId: string) {
  const run = await tx.dryingRun.findUnique({
    where: { id: runId },
    select: {
      id: true,
      number: true,
      startedOn: true,
      startMoisturePercent: true,
      tareG: true,
      endedOn: true,
      version: true,
      lot: { select: { number: true } },
      weighings: {
        where: { correctedBy: null },
        orderBy: { atEpochSeconds: 'asc' },
        select: { id: true, atEpochSeconds: true, weightG: true },
      },
    },
  });
  if (!run) throw notFound('This drying run');
  return run;
}

/**
 * A weight that the run's seed cannot have is most likely a slip, but the moisture at the start may be what is wrong: so
 * it is asked, not refused.
 *
 * @throws AppError beside `weightG`, with word to tick `weightAnyway`
 */
export function refuseOddWeight(
  run: Pick<DryingRunInHand, 'weighings' | 'tareG' | 'startMoisturePercent'>,
  { weightG, weightAnyway }: { weightG: number; weightAnyway: boolean },
): void {
  const [first] = run.weighings;
  if (weightG <= run.tareG) {
    throw fieldError({ weightG: `The empty tray weighs ${run.tareG} g: weigh it with the seed.` });
  }
  if (!first || weightAnyway) return;
  const net = weightG - run.tareG;
  const start = first.weightG - run.tareG;
  const dryMatter = targetWeight({
    weight: start,
    moisturePercent: run.startMoisturePercent,
    targetMoisturePercent: 0,
  });
  if (net < dryMatter) {
    throw fieldError({
      weightG: `That is less than the dry matter of this seed (${(run.tareG + dryMatter).toFixed(1)} g with the tray). Was some spilled, or another tray weighed?`,
      weightAnyway: 'Tick this if the balance really shows it. Then the moisture at the start is wrong.',
    });
  }
  if (net > MOST_TIMES_START * start) {
    throw fieldError({
      weightG: `That is a tenth more than at the start (${first.weightG} g with the tray). Check the figure and the tray.`,
      weightAnyway: 'Tick this if the balance really shows it.',
    });
  }
}
