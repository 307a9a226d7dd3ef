import { writeExperiment } from '../lib/schemas/storage-experiment/read-experiment';
import { createStorageExperiment } from '../lib/server/commands/create-storage-experiment';
import { connections } from '../lib/server/database/connections';
import { DEMO_PERSON } from './demo-person';
import { drawExperimentCounts } from './generators/experiment-counts';
import type { ExperimentStory } from './scenarios/storage-experiment';

/** Takes in the school's storage experiment as a steward would: by pasting its table. */
export async function writeStorageExperiment(story: ExperimentStory): Promise<void> {
  const crop = await connections().reader.crop.findUniqueOrThrow({ where: { name: story.crop }, select: { id: true } });
  await createStorageExperiment(DEMO_PERSON, {
    name: story.name,
    cropId: crop.id,
    notes: story.notes,
    table: writeExperiment(drawExperimentCounts(story)),
  });
}
