/** Plays the planned history through the same commands that the screens use. */

import { normalQuantile } from '../lib/domain/statistics/normal-distribution';
import { createAccession } from '../lib/server/commands/create-accession';
import { logCleanedLot } from '../lib/server/commands/log-cleaned-lot';
import { movePacket } from '../lib/server/commands/move-packet';
import { recordGerminationTest } from '../lib/server/commands/record-germination-test';
import { splitPacket } from '../lib/server/commands/split-packet';
import { takeSeedOut } from '../lib/server/commands/take-seed-out';
import { connections } from '../lib/server/database/connections';
import { loadCropJudging } from '../lib/server/judging/load-crop-judging';
import { storeClimates } from '../lib/server/judging/store-climates';
import { DEMO_PERSON } from './demo-person';
import type { PlannedEvent, PlannedLot, PlannedPlacement } from './generators/plan-history';
import { drawTestOutcome } from './generators/test-outcome';
import { trueViability } from './generators/true-ageing';
import { randomFor } from './random';
import { CROP_HABITS } from './scenarios/crop-habits';
import type { AccessionStory, StoreKey } from './scenarios/story';

interface WrittenLot {
  lotId: string;
  number: string;
  packetId: string;
  seedsLeft: number;
}

export interface WrittenHistory {
  accessionNumbers: Map<AccessionStory, string>;
  /** ids of lots by accession, in the scenario's order */
  lotIds: Map<AccessionStory, string[]>;
  lots: number;
  tests: number;
  cropOf(accessionName: string): AccessionStory['crop'];
  /** how alive a lot truly is on a day, probits; lots counted from the scenario's first, 0 */
  viabilityOf(accessionName: string, lot: number, day: string): number;
}

type EventOf<Kind extends PlannedEvent['kind']> = Extract<PlannedEvent, { kind: Kind }>;

/**
 * @param events    from planHistory, in order
 * @param storeIds  the stores' ids by key
 * @param today     calendar date
 * @throws AppError when a command refuses, which would be a mistake of the scenario
 */
export async function writeHistory(
  events: readonly PlannedEvent[],
  storeIds: Record<StoreKey, string>,
  today: string,
): Promise<WrittenHistory> {
  const { bulk } = connections();
  const crops = new Map([...loadCropJudging(bulk, 'all').values()].map((crop) => [crop.name, crop]));
  const climates = storeClimates(bulk);
  const numbers = new Map<AccessionStory, string>();
  const written = new Map<PlannedLot, WrittenLot>();
  const truths = new Map<PlannedLot, (day: string) => number>();
  let tests = 0;

  const writtenLot = (lot: PlannedLot): WrittenLot => {
    const found = written.get(lot);
    if (!found) throw new Error(`${lot.key} is used before it is stored`);
    return found;
  };
  const cropOf = (name: string) => {
    const crop = crops.get(name);
    if (!crop?.seed) throw new Error(`the reference has no longevity constants for ${name}`);
    return { id: crop.id, seed: crop.seed };
  };
  const placeOf = ({ store, container, moisturePercent }: PlannedPlacement) => ({
    storeId: storeIds[store],
    container,
    moisturePercent,
    // Some of the island's seed was jarred too moist: the demo shows what became of it.
    storeAnyway: true,
  });
  const truthOf = (lot: PlannedLot) => {
    const known = truths.get(lot);
    if (known) return known;
    const placements = lot.placements.map((place) => ({
      ...placeOf(place),
      moisturePercent: place.moisturePercent ?? null,
      from: place.from,
    }));
    const { key, initialProbit, rate } = lot;
    const { yearsPerProbit } = lot.story;
    const trueLot = { key, initialProbit, rate, yearsPerProbit, placements };
    const truth = trueViability(trueLot, cropOf(lot.accession.crop).seed, climates, today);
    truths.set(lot, truth);
    return truth;
  };

  const write: { [Kind in PlannedEvent['kind']]: (event: EventOf<Kind>) => Promise<void> } = {
    accession: async ({ accession, on }) => {
      const { name, donor, origin, notes } = accession;
      const input = { name, cropId: cropOf(accession.crop).id, donor, origin, notes, acquiredOn: on };
      numbers.set(accession, (await createAccession(DEMO_PERSON, input)).number);
    },
    lot: async ({ lot }) => {
      const first = lot.placements[0] as PlannedPlacement;
      const input = {
        accession: numbers.get(lot.accession),
        ...lotFields(lot),
        ...placeOf(first),
        storedOn: lot.storedOn,
      };
      const { lotId, number, packetId, seeds } = await logCleanedLot(DEMO_PERSON, input);
      written.set(lot, { lotId, number, packetId, seedsLeft: seeds });
    },
    move: async ({ lot, to }) => {
      await movePacket(DEMO_PERSON, { packetId: writtenLot(lot).packetId, ...placeOf(to), from: to.from });
    },
    duplicate: async ({ lot, seeds, on }) => {
      const there = lot.placements.filter((place) => place.from <= on).at(-1) as PlannedPlacement;
      const packed: PlannedPlacement = { ...there, store: 'partner', container: 'foil-pouch' };
      const { packetId } = writtenLot(lot);
      await splitPacket(DEMO_PERSON, {
        packetId,
        ...placeOf(packed),
        amount: seeds,
        unit: 'seeds',
        sealed: true,
        from: on,
        role: 'safety-duplicate',
      });
      writtenLot(lot).seedsLeft -= seeds;
    },
    withdrawal: async ({ lot, reason, seeds, note, on }) => {
      const { packetId } = writtenLot(lot);
      await takeSeedOut(DEMO_PERSON, { packetId, amount: seeds, unit: 'seeds', reason, on, note });
      writtenLot(lot).seedsLeft -= seeds;
    },
    test: async (event) => {
      const lot = writtenLot(event.lot);
      tests += await writeTest(event, lot, truthOf(event.lot)(event.on));
    },
  };
  for (const event of events) await write[event.kind](event as never);

  const lotIds = new Map<AccessionStory, string[]>();
  for (const [{ accession, story }, { lotId }] of written) {
    const ids = lotIds.get(accession) ?? [];
    ids[accession.lots.indexOf(story)] = lotId;
    lotIds.set(accession, ids);
  }
  const storyOf = (name: string) => {
    const accession = [...numbers.keys()].find((story) => story.name === name);
    if (!accession) throw new RangeError(`writeHistory: the scenario has no accession ${name}`);
    return accession;
  };
  return {
    accessionNumbers: numbers,
    lotIds,
    lots: written.size,
    tests,
    cropOf: (name) => storyOf(name).crop,
    viabilityOf: (name, index, day) => {
      const story = storyOf(name).lots[index];
      const lot = [...written.keys()].find((planned) => planned.story === story);
      if (!lot) throw new RangeError(`writeHistory: ${name} has no lot ${index}`);
      return truthOf(lot)(day);
    },
  };
}

function lotFields(lot: PlannedLot) {
  const { story, generation, seeds, thousandSeedWeightG } = lot;
  const habit = CROP_HABITS[lot.accession.crop];
  const weightG = Number(((seeds * thousandSeedWeightG) / 1000).toPrecision(4));
  const asReceived = generation === 0;
  return {
    harvestedOn: lot.harvestedOn,
    generation,
    isolation: story.isolation ?? (asReceived ? 'unknown' : habit.isolation),
    plantsHarvested: story.plants ?? (asReceived ? undefined : habit.plants),
    cleanWeightG: story.amount === 'counted' ? undefined : weightG,
    thousandSeedWeightG: story.amount === undefined ? thousandSeedWeightG : undefined,
    seedCount: story.amount === 'counted' ? seeds : undefined,
    treatment: story.treatment,
    notes: story.notes,
  };
}

/** @returns how many entries were made: two when the first was corrected */
async function writeTest(event: EventOf<'test'>, lot: WrittenLot, viabilityProbit: number): Promise<number> {
  const { test, on, finishedOn } = event;
  const habit = CROP_HABITS[event.lot.accession.crop];
  const random = randomFor(`${event.lot.key} test ${on}`);
  const [replicates, seedsPerReplicate] = test.dishes ?? dishesFor(lot.seedsLeft);
  const counts = drawTestOutcome({
    viabilityProbit: test.shows === undefined ? viabilityProbit : normalQuantile(test.shows),
    replicates,
    seedsPerReplicate,
    hardShare: habit.hardShare,
    freshShare: habit.freshShare,
    random,
  });
  const input = {
    lot: lot.number,
    packetId: lot.packetId,
    takeSeed: true,
    setOn: on,
    finishedOn,
    method: habit.method,
    notes: test.notes,
    replicates: counts,
  };
  lot.seedsLeft -= replicates * seedsPerReplicate;
  const slip = test.firstWrittenWith;
  if (!slip) {
    await recordGerminationTest(DEMO_PERSON, input);
    return 1;
  }
  const misread = counts.map((row, index) => (index === 0 ? withMoreNormal(row, slip.normalTooMany) : row));
  const { id } = await recordGerminationTest(DEMO_PERSON, { ...input, replicates: misread });
  await recordGerminationTest(DEMO_PERSON, { ...input, correctsId: id, correctionReason: slip.reason });
  return 2;
}

/** As many seeds as the lot can spare: four hundred where there is plenty, forty where there is hardly any. */
function dishesFor(seedsLeft: number): readonly [number, number] {
  if (seedsLeft > 8000) return [4, 100];
  if (seedsLeft > 1500) return [4, 50];
  if (seedsLeft > 500) return [4, 25];
  return [2, 20];
}

type Counts = ReturnType<typeof drawTestOutcome>[number];

/** The misreading of one row: seedlings counted as normal that were abnormal or dead. */
function withMoreNormal(row: Counts, wanted: number): Counts {
  const fromDead = Math.min(wanted, row.dead);
  const fromAbnormal = Math.min(wanted - fromDead, row.abnormal);
  return {
    ...row,
    normal: row.normal + fromDead + fromAbnormal,
    dead: row.dead - fromDead,
    abnormal: row.abnormal - fromAbnormal,
  };
}
