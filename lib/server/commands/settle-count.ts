import { countsInWords } from '@/lib/domain/germination/bench/counts-in-words';
import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { oneAfterTheOther } from '@/lib/domain/germination/bench/one-after-the-other';
import { seedsFound, type TrayCount } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { settleCountSchema } from '@/lib/schemas/tray-counts';
import { AppError } from '../app-error';
import { writtenCount } from '../trays/count-row';
import { seenCounts } from '../trays/seen-counts';
import { trayInHand } from '../trays/tray-in-hand';
import { writeCount } from '../trays/write-count';
import { defineCommand } from './command';
import { fieldError } from './field-error';

/**
 * Says which of the counts of one dish and day holds that disagree: one of them, all of them one after the other, or
 * another. Nothing is deleted: a further count replaces all that stand.
 *
 * Checked in tests/server/commands/settle-count.test.ts
 */
export const settleCount = defineCommand({
  name: 'settle-count',
  role: 'volunteer',
  schema: settleCountSchema,
  async run({ tx, person, audit }, input) {
    const tray = await trayInHand(tx, input.trayId, 'open');
    const state = tray.states.find(({ dish }) => dish.id === input.dishId);
    const day = dayCounts(tray.counts.map(writtenCount)).find(
      ({ dishId, on }) => dishId === input.dishId && on === input.on,
    );
    if (!state || !day?.disagree || seenCounts([day]) !== input.version) {
      throw new AppError('conflict', 'These counts were settled or changed meanwhile: load the page again.');
    }
    const found = foundBy(input, day.standing);
    const elsewhere = seedsFound(state.totals) - (day.found ? seedsFound(day.found) : 0);
    const most = state.dish.seeds - elsewhere;
    if (found && seedsFound(found) > most) {
      const field = input.kind === 'other' ? 'other.normal' : 'settle';
      throw fieldError({
        [field]: `That is ${seedsFound(found)} seeds, and only ${Math.max(0, most)} of ${state.dish.seeds} are left for this day.`,
      });
    }
    const replaces = day.standing.map(({ id }) => id);
    await writeCount(tx, person, { trayId: tray.id, dishId: input.dishId, on: input.on, found, replaces });
    const said = day.standing.map(({ byName, found: theirs }) => `${byName} ${countsInWords(theirs)}`).join('; ');
    await audit({
      entity: 'tray',
      entityId: tray.id,
      summary: `Settled dish ${state.dish.position} of ${tray.number} on ${input.on}: ${countsInWords(found)} (${said})`,
    });
    return { number: tray.number };
  },
});

function foundBy(
  { kind, countId, other }: { kind: 'one' | 'both' | 'other'; countId: string; other: ClassCounts | null },
  standing: readonly TrayCount[],
): ClassCounts | null {
  if (kind === 'other') return other;
  if (kind === 'both') return oneAfterTheOther(standing);
  const chosen = standing.find(({ id }) => id === countId);
  if (!chosen) throw fieldError({ settle: 'Choose which count holds.' });
  return chosen.found;
}
