import { createStore } from '../lib/server/commands/create-store';
import { connections } from '../lib/server/database/connections';
import { DEMO_PERSON } from './demo-person';
import type { DemoCalendar } from './generators/demo-calendar';
import { storeReadings } from './generators/store-readings';
import type { StoreKey, StoreStory } from './scenarios/story';
import { writeReadings } from './write-readings';

/**
 * Adds the stores, each after the one around it, and what their loggers wrote.
 *
 * @returns the stores' ids by key
 */
export async function writeStores(
  stories: readonly StoreStory[],
  calendar: DemoCalendar,
): Promise<Record<StoreKey, string>> {
  const ids: Partial<Record<StoreKey, string>> = {};
  for (const story of stories) {
    const { key, inside, climate, ...fields } = story;
    const { id } = await createStore(DEMO_PERSON, { ...fields, parentId: inside && ids[inside] });
    ids[key] = id;
    if (climate) await writeReadings(connections().bulk, id, storeReadings(story.name, climate, calendar));
  }
  return ids as Record<StoreKey, string>;
}
