/** Moisture tests that agree, differ and put a seal in doubt; one drying run that ended and one that goes on. */
import { addDays } from '../lib/domain/calendar/calendar-date';
import { endDryingRun } from '../lib/server/commands/end-drying-run';
import { recordDryingWeighing } from '../lib/server/commands/record-drying-weighing';
import { recordMoistureTest } from '../lib/server/commands/record-moisture-test';
import { startDryingRun } from '../lib/server/commands/start-drying-run';
import { connections } from '../lib/server/database/connections';
import { DEMO_PERSON } from './demo-person';
import { findStoryLot } from './find-story-lot';
import { DRYING_STORIES, type DryingStory, MOISTURE_STORIES, type MoistureStory } from './scenarios/moisture';

/**
 * @param today  calendar date
 * @throws AppError when a command refuses, which would be a mistake of the scenario
 */
export async function writeMoisture(today: string): Promise<void> {
  for (const story of MOISTURE_STORIES) await writeTest(story, today);
  for (const story of DRYING_STORIES) await writeRun(story, today);
}

async function writeTest(story: MoistureStory, today: string): Promise<void> {
  const { accession, lot, daysAgo, dishes, ...found } = story;
  const { number, packetId } = await findStoryLot(accession, lot);
  await recordMoistureTest(DEMO_PERSON, {
    ...found,
    lot: number,
    packetId,
    testedOn: addDays(today, -daysAgo),
    dishes: dishes?.map(([dishG, dishAndFreshG, dishAndDryG]) => ({ dishG, dishAndFreshG, dishAndDryG })),
  });
}

async function writeRun(story: DryingStory, today: string): Promise<void> {
  const { accession, lot, weighings, endedDaysAgo, ...run } = story;
  const { number, packetId } = await findStoryLot(accession, lot);
  const [first, ...others] = weighings.map(([daysAgo, time, weightG]) => ({
    at: `${addDays(today, -daysAgo)}T${time}`,
    weightG,
  }));
  const started = await startDryingRun(DEMO_PERSON, { ...run, ...first, lot: number, packetId });
  const { id: runId } = await connections().reader.dryingRun.findUniqueOrThrow({
    where: { number: started.number },
    select: { id: true },
  });
  for (const weighing of others) await recordDryingWeighing(DEMO_PERSON, { runId, ...weighing });
  if (endedDaysAgo !== undefined) await endDryingRun(DEMO_PERSON, { runId, on: addDays(today, -endedDaysAgo) });
}
