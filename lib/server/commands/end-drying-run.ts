import { moistureByWeight } from '@/lib/domain/moisture/drying';
import { endDryingRunSchema } from '@/lib/schemas/drying-run';
import { AppError } from '../app-error';
import { localDate } from '../local-time';
import { defineCommand } from './command';
import { dryingRunInHand } from './drying-run-in-hand';
import { fieldError } from './field-error';

/**
 * Ends a drying run: the seed is taken off and packed. What it reached is told by its last weighing; whoever packs it
 * writes that moisture with the packet.
 *
 * @returns number of the run
 * Refusals: a run that has ended already, or a day before its last weighing.
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export const endDryingRun = defineCommand({
  name: 'end-drying-run',
  role: 'volunteer',
  schema: endDryingRunSchema,
  async run({ tx, today, audit }, input) {
    const run = await dryingRunInHand(tx, input.runId);
    if (run.endedOn !== null) throw new AppError('conflict', `${run.number} ended already, on ${run.endedOn}.`);
    const [first, last] = [run.weighings[0], run.weighings.at(-1)];
    if (!first || !last) throw new Error(`drying run ${run.number} has no weighing`);
    const on = input.on ?? today;
    const lastOn = localDate(last.atEpochSeconds);
    if (on < lastOn) throw fieldError({ on: `It was weighed on ${lastOn}: choose that day or later.` });
    await tx.dryingRun.update({ where: { id: run.id }, data: { endedOn: on, version: run.version + 1 } });
    const reached = moistureByWeight({
      weightBefore: first.weightG - run.tareG,
      moisturePercentBefore: run.startMoisturePercent,
      weightNow: last.weightG - run.tareG,
    });
    await audit({
      entity: 'drying run',
      entityId: run.id,
      summary: `Ended drying run ${run.number} of lot ${run.lot.number} on ${on}${reached.ok ? ` at ${reached.moisturePercent.toFixed(1)} %` : ''}`,
      before: { endedOn: null, version: run.version },
      after: { endedOn: on, version: run.version + 1 },
    });
    return { number: run.number };
  },
});
