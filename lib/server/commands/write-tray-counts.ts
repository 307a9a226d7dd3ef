import { countsInWords } from '@/lib/domain/germination/bench/counts-in-words';
import { type DayCount, dayCounts } from '@/lib/domain/germination/bench/day-counts';
import type { DishState } from '@/lib/domain/germination/bench/dish-state';
import { NOTHING_FOUND, sayTheSame, seedsFound } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { writeTrayCountsInput } from '@/lib/schemas/tray-counts';
import { AppError } from '../app-error';
import { type WrittenCount, writtenCount } from '../trays/count-row';
import { seenCounts } from '../trays/seen-counts';
import { trayInHand } from '../trays/tray-in-hand';
import { writeCount } from '../trays/write-count';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { StaleVersion } from './stale-version';

/**
 * Writes down or corrects a tray's counts of one day, as from a paper beside a laptop. What stood is replaced by further
 * counts, as the form saw it: when somebody counted meanwhile, what they wrote is shown first.
 *
 * @returns the tray's number, and how many dishes were written
 * Checked in tests/server/commands/write-tray-counts.test.ts
 */
export const writeTrayCounts = defineCommand({
  name: 'write-tray-counts',
  role: 'volunteer',
  schema: writeTrayCountsInput,
  async run({ tx, person, audit }, input) {
    const tray = await trayInHand(tx, input.trayId, 'open');
    const { number, setOn, states } = tray;
    if (input.on < setOn) throw fieldError({ on: `The tray was set on ${setOn}: choose that day or a later one.` });
    const standing = dayCounts(tray.counts.map(writtenCount)).filter(({ on }) => on === input.on);
    refuseUnseen(states, standing, input.version);

    const refused: Record<string, string> = {};
    const written: {
      state: DishState<WrittenCount>;
      day: DayCount<WrittenCount> | undefined;
      found: ClassCounts | null;
    }[] = [];
    for (const state of states) {
      const day = standing.find(({ dishId }) => dishId === state.dish.id);
      const asked = input.dishes[state.dish.id] ?? null;
      const elsewhere = seedsFound(state.totals) - (day?.found ? seedsFound(day.found) : 0);
      const most = state.dish.seeds - elsewhere;
      const found = input.restDead ? withRestDead(asked, most) : asked;
      if (found && seedsFound(found) > most) {
        refused[`dishes.${state.dish.id}.normal`] = tooMany(state.dish.seeds, elsewhere, seedsFound(found));
      }
      if (found && found.normal > 0 && input.on === setOn) {
        refused[`dishes.${state.dish.id}.normal`] =
          `Nothing can have come up on ${setOn}, when it was set: check the day.`;
      }
      if (found === null && !day) continue;
      const alone = day?.standing.length === 1 ? day : undefined;
      if (alone && sayTheSame(alone.found, found)) continue;
      written.push({ state, day, found });
    }
    if (Object.keys(refused).length > 0) throw fieldError(refused);
    if (written.length === 0) throw new AppError('refused', 'Nothing was changed: write what was found in a dish.');

    for (const { state, day, found } of written) {
      const replaces = day?.standing.map(({ id }) => id) ?? [];
      const dishId = state.dish.id;
      await writeCount(tx, person, {
        trayId: tray.id,
        dishId,
        on: input.on,
        found,
        replaces,
        countedBy: input.countedBy,
      });
    }
    const inWords = written.map(({ state, found }) => `dish ${state.dish.position}: ${countsInWords(found)}`);
    await audit({
      entity: 'tray',
      entityId: tray.id,
      summary: `Wrote the counts of ${number} on ${input.on}: ${inWords.join('; ')}`,
    });
    return { number, dishes: written.length };
  },
});

/** On the final count what still lies there is dead; a dish that is empty already gets no count of nothing. */
function withRestDead(asked: ClassCounts | null, most: number): ClassCounts | null {
  const rest = most - (asked ? seedsFound(asked) : 0);
  if (rest <= 0) return asked;
  const found = asked ?? NOTHING_FOUND;
  return { ...found, dead: found.dead + rest };
}

function tooMany(seeds: number, elsewhere: number, found: number): string {
  const others = elsewhere > 0 ? `, and ${elsewhere} were found on other days` : '';
  return `${seeds} seeds were set${others}: at most ${Math.max(0, seeds - elsewhere)} can be found on this day, not ${found}.`;
}

function refuseUnseen(
  states: readonly DishState<WrittenCount>[],
  standing: readonly DayCount<WrittenCount>[],
  seen: string,
): void {
  const now = seenCounts(standing);
  if (seen === now) return;
  const known = new Set(seen.split(' '));
  const news = states.flatMap(({ dish }) =>
    standing
      .filter(({ dishId }) => dishId === dish.id)
      .flatMap((day) => day.standing.filter(({ id }) => !known.has(id)))
      .map(({ byName, found }) => `Dish ${dish.position}: ${byName} wrote ${countsInWords(found)}.`),
  );
  throw new StaleVersion(
    [
      'Somebody wrote down counts of this day while you were writing, so yours are not saved yet.',
      ...news,
      'What you typed is still here: look it over and save again to put it in place of theirs.',
    ].join(' '),
    now,
  );
}
