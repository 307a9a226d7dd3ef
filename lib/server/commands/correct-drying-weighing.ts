import { correctDryingWeighingSchema } from '@/lib/schemas/drying-run';
import { AppError, notFound } from '../app-error';
import { localMinute, nowEpochSeconds } from '../local-time';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { dryingRunInHand, refuseOddWeight } from './drying-run-in-hand';
import { fieldError } from './field-error';
import { minuteInWords, momentOf } from './moment-of-weighing';

/**
 * Puts a weighing right by a further one that names it, also after the run has ended. Where no time is given the old one
 * stays.
 *
 * @returns number of the run
 * Refusals: a weighing corrected already; a time ahead or at which there is another one; a later weighing put before
 * the first, or the first put behind the second, whose moisture would then be the known one; a weight that does not
 * fit, until somebody says that it is right.
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export const correctDryingWeighing = defineCommand({
  name: 'correct-drying-weighing',
  role: 'volunteer',
  schema: correctDryingWeighingSchema,
  async run({ tx, person, audit }, input) {
    const old = await tx.dryingWeighing.findUnique({
      where: { id: input.weighingId },
      select: { id: true, runId: true, weightG: true, atEpochSeconds: true, correctedBy: { select: { id: true } } },
    });
    if (!old) throw notFound('This weighing');
    if (old.correctedBy) {
      throw new AppError('conflict', 'This weighing has been corrected meanwhile. Look at the run again.');
    }
    const run = await dryingRunInHand(tx, old.runId);
    const isFirst = run.weighings[0]?.id === old.id;
    const others = run.weighings.filter(({ id }) => id !== old.id);
    const atEpochSeconds = momentKept(input.at, old.atEpochSeconds);
    if (others.some((other) => other.atEpochSeconds === atEpochSeconds)) {
      throw fieldError({ at: 'There is another weighing at this time.' });
    }
    const [next] = others;
    if (next && isFirst !== atEpochSeconds < next.atEpochSeconds) {
      throw fieldError({
        at: isFirst
          ? `The run begins with this weighing: write a time before the next one, ${minuteInWords(next.atEpochSeconds)}.`
          : `The run began at ${minuteInWords(next.atEpochSeconds)}: write a later time.`,
      });
    }
    if (input.weightG === old.weightG && atEpochSeconds === old.atEpochSeconds) {
      throw fieldError({ weightG: 'This is what is written already.' });
    }
    refuseOddWeight({ ...run, weighings: isFirst ? [] : run.weighings }, input);
    await tx.dryingWeighing.create({
      data: { id: newId(), runId: run.id, atEpochSeconds, weightG: input.weightG, byId: person.id, correctsId: old.id },
    });
    await audit({
      entity: 'drying run',
      entityId: run.id,
      summary: `Corrected a weighing of ${run.number}, lot ${run.lot.number}: ${input.weightG} g at ${minuteInWords(atEpochSeconds)} in place of ${old.weightG} g at ${minuteInWords(old.atEpochSeconds)}`,
      before: { weightG: old.weightG, atEpochSeconds: old.atEpochSeconds },
      after: { weightG: input.weightG, atEpochSeconds },
    });
    return { number: run.number };
  },
});

/** The form shows minutes: a minute that was not changed keeps its seconds. */
function momentKept(typed: string | undefined, old: number): number {
  return typed === undefined || typed === localMinute(old) ? old : momentOf(typed, nowEpochSeconds());
}
