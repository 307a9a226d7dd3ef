import { updateBank } from '../lib/server/commands/update-bank';
import { connections } from '../lib/server/database/connections';
import { enqueueWrite } from '../lib/server/database/write-queue';
import { judgeLots } from '../lib/server/judging/judge-lots';
import { today as currentDay } from '../lib/server/today';
import { DEMO_PERSON } from './demo-person';
import { demoCalendar } from './generators/demo-calendar';
import { planHistory } from './generators/plan-history';
import { refuseCollection } from './refuse-collection';
import { ACCESSION_STORIES, BANK_HABITS, BANK_NAME } from './scenarios/brannasay';
import { ONION_EXPERIMENT } from './scenarios/storage-experiment';
import { STORES } from './scenarios/stores';
import { writeDecisions } from './write-decisions';
import { writeStorageExperiment } from './write-experiment';
import { writeHistory } from './write-history';
import { writeMoisture } from './write-moisture';
import { writePacketCare } from './write-packet-care';
import { writeRequests } from './write-requests';
import { writeStores } from './write-stores';
import { writeTrays } from './write-trays';

/** SQLite's own numbers for how long a commit waits for the disk. */
const NOT_SYNCHRONOUS = 0;
const FULLY_SYNCHRONOUS = 2;

/**
 * Fills an empty, migrated database that has the reference facts with the demo collection. Everything goes through the
 * commands of the screens, except readings, which are too many.
 *
 * @param today  calendar date from which everything is counted back; the commands' own today
 * @returns how much was written
 * @throws Error when the database holds a collection already, so that a real one can never be touched
 * @throws RangeError when `today` is not the day on which the commands act (environment: HILUM_TODAY)
 * Checked in tests/seed-demo/load-demo.test.ts
 */
export async function loadDemo(today: string): Promise<{ accessions: number; lots: number; tests: number }> {
  if (today !== currentDay()) {
    throw new RangeError(`loadDemo: today must be the commands' own, ${currentDay()} (see HILUM_TODAY), got ${today}`);
  }
  refuseCollection(connections().bulk);
  const calendar = demoCalendar(today);
  return withoutWaitingForTheDisk(async () => {
    await nameBank();
    const storeIds = await writeStores(STORES, calendar);
    const history = await writeHistory(planHistory(ACCESSION_STORIES, calendar), storeIds, today);
    await writePacketCare(history, storeIds, today);
    await writeDecisions(history, today);
    await writeRequests(today);
    await writeMoisture(today);
    await writeStorageExperiment(ONION_EXPERIMENT);
    const closed = await writeTrays(history, today);
    await enqueueWrite(() => judgeLots(connections().bulk, 'all', today));
    return { accessions: history.accessionNumbers.size, lots: history.lots, tests: history.tests + closed };
  });
}

async function nameBank(): Promise<void> {
  const bank = await connections().reader.bank.findUniqueOrThrow({ where: { id: 1 } });
  await updateBank(DEMO_PERSON, {
    name: BANK_NAME,
    thresholdKind: bank.thresholdKind,
    thresholdValue: String(bank.thresholdValue * 100),
    assurance: String(bank.assurance * 100),
    sowingMonth: BANK_HABITS.sowingMonth,
    emergence: BANK_HABITS.emergencePercent,
    version: bank.version,
  });
}

/**
 * Hundreds of small transactions would each wait for the disk. The demo can be made again, so it is flushed once, at
 * the end; every later write is safe against a power cut as always.
 */
async function withoutWaitingForTheDisk<Result>(task: () => Promise<Result>): Promise<Result> {
  const { writer, bulk } = connections();
  const before = await enqueueWrite(async () => {
    const [ofWriter] = await writer.$queryRawUnsafe<{ synchronous: bigint }[]>('PRAGMA synchronous');
    const ofBulk = bulk.pragma('synchronous', { simple: true });
    return { writer: Number(ofWriter?.synchronous ?? FULLY_SYNCHRONOUS), bulk: Number(ofBulk) };
  });
  const setSynchronous = (levels: { writer: number; bulk: number }) =>
    enqueueWrite(async () => {
      await writer.$queryRawUnsafe(`PRAGMA synchronous = ${levels.writer}`);
      bulk.pragma(`synchronous = ${levels.bulk}`);
    });
  await setSynchronous({ writer: NOT_SYNCHRONOUS, bulk: NOT_SYNCHRONOUS });
  try {
    return await task();
  } finally {
    await setSynchronous(before);
    bulk.pragma('wal_checkpoint(TRUNCATE)');
  }
}
