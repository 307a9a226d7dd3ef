import { createStore } from '../lib/server/commands/create-store';
import { moveStore } from '../lib/server/commands/move-store';
import { DEMO_PERSON } from './demo-person';
import type { DemoCalendar } from './generators/demo-calendar';
import { storeReadings } from './generators/store-readings';
import type { StoreKey, StoreStory } from './scenarios/story';
import { writeReadings } from './write-readings';

/**
 * Adds the stores, each after the one around it, with what their loggers wrote, and moves the one that was moved.
 *
 * @returns the stores' ids by key
 */
export async function writeStores(
  stories: readonly StoreStory[],
  calendar: DemoCalendar,
): Promise<Record<StoreKey, string>> {
  const ids: Partial<Record<StoreKey, string>> = {};
  for (const story of stories) {
    const { key, inside, movedInto, climate, ...fields } = story;
    const inheritsTarget = fields.targetTemperatureC === undefined;
    const { id } = await createStore(DEMO_PERSON, { ...fields, inheritsTarget, parentId: inside && ids[inside] });
    ids[key] = id;
    if (movedInto) {
      const from = calendar.dayIn(movedInto.season, movedInto.day);
      await moveStore(DEMO_PERSON, { id, version: 1, parentId: ids[movedInto.store], from });
    }
    if (climate) await writeReadings(id, storeReadings(story.name, climate, calendar));
  }
  return ids as Record<StoreKey, string>;
}
