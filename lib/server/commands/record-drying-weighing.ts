import { recordDryingWeighingSchema } from '@/lib/schemas/drying-run';
import { nowEpochSeconds } from '../local-time';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { dryingRunInHand, refuseOddWeight } from './drying-run-in-hand';
import { fieldError } from './field-error';
import { minuteInWords, momentOf } from './moment-of-weighing';

/** The same weight so soon after is one weighing sent twice, or read by two people. */
const SAME_WEIGHING_SECONDS = 60;

/**
 * Adds a weighing to a drying run.
 *
 * @returns number of the run
 * Refusals: a run that has ended; a time ahead, before the start or at which there is a weighing; a weight that does not fit,
 * until somebody says that it is right; the same weight a moment later.
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export const recordDryingWeighing = defineCommand({
  name: 'record-drying-weighing',
  role: 'volunteer',
  schema: recordDryingWeighingSchema,
  async run({ tx, person, audit }, input) {
    const run = await dryingRunInHand(tx, input.runId);
    if (run.endedOn !== null) {
      throw fieldError({ weightG: `${run.number} ended on ${run.endedOn}: start another run to go on drying.` });
    }
    const now = nowEpochSeconds();
    const wanted = momentOf(input.at, now);
    const [first] = run.weighings;
    if (first && wanted < first.atEpochSeconds) {
      throw fieldError({
        at: `The run was started at ${minuteInWords(first.atEpochSeconds)}, and the moisture is known from then on.`,
      });
    }
    const repeated = run.weighings.find(
      ({ weightG, atEpochSeconds }) =>
        weightG === input.weightG && Math.abs(atEpochSeconds - wanted) < SAME_WEIGHING_SECONDS,
    );
    if (repeated) {
      throw fieldError({
        weightG: `${repeated.weightG} g at ${minuteInWords(repeated.atEpochSeconds)} is written down already.`,
      });
    }
    const taken = new Set(run.weighings.map(({ atEpochSeconds }) => atEpochSeconds));
    if (input.at !== undefined && taken.has(wanted)) {
      throw fieldError({ at: 'There is a weighing at this time: correct that one, or write another time.' });
    }
    refuseOddWeight(run, input);
    // Two people who weigh in the same second: both count, a second apart.
    let atEpochSeconds = wanted;
    while (taken.has(atEpochSeconds)) atEpochSeconds += 1;
    await tx.dryingWeighing.create({
      data: { id: newId(), runId: run.id, atEpochSeconds, weightG: input.weightG, byId: person.id },
    });
    await audit({
      entity: 'drying run',
      entityId: run.id,
      summary: `Weighed ${run.number} of lot ${run.lot.number}: ${input.weightG} g at ${minuteInWords(atEpochSeconds)}`,
    });
    return { number: run.number };
  },
});
