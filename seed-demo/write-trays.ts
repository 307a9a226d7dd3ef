/** Sets the trays of the scenario, counts them as phones at the bench do, and closes those that are done. */
import { addDays } from '../lib/domain/calendar/calendar-date';
import { methodChoices } from '../lib/domain/germination/plan/method-choices';
import { addBenchEntries } from '../lib/server/commands/add-bench-entries';
import { closeTray } from '../lib/server/commands/close-tray';
import { setTrays } from '../lib/server/commands/set-trays';
import { connections } from '../lib/server/database/connections';
import { newId } from '../lib/server/new-id';
import { DEMO_PERSON } from './demo-person';
import { findStoryLot } from './find-story-lot';
import { drawCourse } from './generators/germination-course';
import { drawTestOutcome } from './generators/test-outcome';
import { randomFor } from './random';
import { CROP_HABITS } from './scenarios/crop-habits';
import { GROUPS, TRAY_STORIES, type TrayStory } from './scenarios/trays';
import type { WrittenHistory } from './write-history';

const PHONE = 'demo-phone-1';
/** The bench is counted before the day's other work. */
const COUNTED_AT = 'T09:20:00.000Z';

/**
 * @param today  calendar date
 * @returns how many tests were finished
 * @throws AppError when a command refuses, which would be a mistake of the scenario
 */
export async function writeTrays(history: WrittenHistory, today: string): Promise<number> {
  let closed = 0;
  // Numbers are given in the order in which they were set.
  for (const story of TRAY_STORIES) {
    const tray = await setTray(story, addDays(today, -story.setDaysAgo));
    await countTray(story, tray, history);
    if (!story.closed) continue;
    await closeTray(DEMO_PERSON, { trayId: tray.id });
    closed += 1;
  }
  return closed;
}

type SetTray = Awaited<ReturnType<typeof setTray>>;

async function setTray(story: TrayStory, setOn: string) {
  const { reader } = connections();
  const { number: lot, cropId, packetId } = await findStoryLot(story.accession, story.lot);
  const methods = await reader.germinationMethod.findMany({ where: { cropId }, orderBy: { id: 'asc' } });
  const choice = methodChoices(methods).find(({ temperatures }) => temperatures === story.temperatures);
  if (!choice) throw new RangeError(`writeTrays: ${story.accession} is not tested at ${story.temperatures}`);
  const { prechillDays = 0, preTreatment, countEveryDays, place, dishes } = story;
  const firstCountDays = story.firstCountDays ?? choice.method.firstCountDays ?? choice.method.finalCountDays ?? 0;
  const size = dishes ? { dishes: dishes[0], seedsEach: dishes[1] } : { size: 'groups', ...GROUPS };
  const { numbers } = await setTrays(DEMO_PERSON, {
    setOn,
    place,
    trays: [
      {
        lot,
        seedFrom: `packet:${packetId}`,
        method: choice.key,
        ...size,
        ...{ firstCountDays, prechillDays, preTreatment, countEveryDays },
      },
    ],
  });
  const tray = await reader.tray.findUniqueOrThrow({
    where: { number: numbers[0] ?? '' },
    select: { id: true, dishes: { orderBy: { position: 'asc' }, select: { id: true, seeds: true } } },
  });
  return { ...tray, setOn, mostByDay: firstCountDays, prechillDays };
}

async function countTray(story: TrayStory, tray: SetTray, history: WrittenHistory): Promise<void> {
  const { accession, lot, countedOnDays, closed = false, notes = [] } = story;
  const { id: trayId, setOn, prechillDays, mostByDay } = tray;
  const habit = CROP_HABITS[history.cropOf(accession)];
  const courses = tray.dishes.map(({ id: dishId, seeds }, index) => {
    const random = randomFor(`tray ${accession} ${lot} dish ${index + 1}`);
    const [outcome] = drawTestOutcome({
      viabilityProbit: history.viabilityOf(accession, lot, setOn),
      replicates: 1,
      seedsPerReplicate: seeds,
      hardShare: habit.hardShare,
      freshShare: habit.freshShare,
      random,
    });
    if (!outcome) throw new Error('one replicate was drawn');
    // Nothing grows while it lies cold.
    const warmDays = countedOnDays.map((day) => day - prechillDays);
    return { dishId, days: drawCourse({ outcome, countedOnDays: warmDays, mostByDay, closed, random }) };
  });
  const on = (day: number) => addDays(setOn, day);
  const entries = [
    ...countedOnDays.flatMap((day, index) =>
      courses.map(({ dishId, days }) => ({
        ...{ kind: 'count', id: newId(), trayId, dishId, on: on(day), found: days[index] },
        ...{ replaces: [], places: null, countedBy: null, madeAt: `${on(day)}${COUNTED_AT}` },
      })),
    ),
    ...notes.map(({ onDay, dish, text }) => ({
      ...{ kind: 'note', id: newId(), trayId, dish, text, on: on(onDay), madeAt: `${on(onDay)}${COUNTED_AT}` },
    })),
  ];
  if (entries.length === 0) return;
  const { answers } = await addBenchEntries(DEMO_PERSON, { deviceId: PHONE, entries });
  const refused = answers.find(({ outcome }) => outcome !== 'kept');
  if (refused) throw new Error(`writeTrays: ${accession}: ${refused.message}`);
}
