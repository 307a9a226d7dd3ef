import { dishesFor } from '@/lib/domain/germination/plan/test-sizes';
import { setNextGroupInput } from '@/lib/schemas/set-trays';
import { AppError, notFound } from '../app-error';
import { findSeries, sameDaysFrom, type TestSeries } from '../queries/test-series';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { findSeedForTray } from './seed-for-tray';
import { writeTray } from './write-tray';

/**
 * Sets the next group of a test in groups, done as the first was, with as many seeds as its plan asks for.
 *
 * @returns number of the new tray
 * Refusals: no such test; a group that is still being counted, or a plan that is decided or at its end; beside `seedFrom`
 * as for any tray; beside `setOn` a day before the group before.
 * Checked in tests/server/commands/set-next-group.test.ts
 */
export const setNextGroup = defineCommand({
  name: 'set-next-group',
  role: 'volunteer',
  schema: setNextGroupInput,
  async run(context, input) {
    const { tx, rejudge } = context;
    const series = await findSeries(input.seriesId, tx);
    if (!series) throw notFound('This test in groups');
    const seeds = nextSeeds(series);
    const before = series.groups.at(-1);
    if (before && input.setOn < before.setOn) {
      throw fieldError({
        setOn: `Group ${before.groupNumber} was set on ${before.setOn}: this one follows it, so choose that day or a later one.`,
      });
    }
    const first = await tx.tray.findUniqueOrThrow({ where: { id: series.groups[0]?.id ?? '' } });
    const seed = await findSeedForTray(tx, input.seedFrom, { lot: series.lot, seeds, setOn: input.setOn });
    const { number } = await writeTray(context, {
      lot: series.lot,
      seed,
      dishes: dishesFor(seeds),
      series: { id: series.seriesId, groupNumber: (before?.groupNumber ?? 0) + 1 },
      setOn: input.setOn,
      substrate: first.substrate,
      temperatures: first.temperatures,
      light: first.light,
      preTreatment: first.preTreatment,
      prechillDays: first.prechillDays,
      ...sameDaysFrom(first, input.setOn),
      countEveryDays: first.countEveryDays,
      place: input.place ?? null,
      notes: input.notes ?? null,
      sequentialPlan: first.sequentialPlan,
    });
    rejudge([series.lot.id]);
    return { number };
  },
});

function nextSeeds({ groups, soFar }: TestSeries): number {
  if (soFar.nextSeeds !== null) return soFar.nextSeeds;
  const open = groups.find(({ status }) => status === 'open');
  throw new AppError(
    'conflict',
    open
      ? `Group ${open.groupNumber}, tray ${open.number}, is still being counted: close it first.`
      : 'The groups so far are enough: this test takes no more seed.',
  );
}
