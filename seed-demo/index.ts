/** Command line of the demo collection. `npm run up` loads it by itself on the first run; this is for making another. */
import { existsSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import { isCalendarDate } from '../lib/domain/calendar/calendar-date';
import { closeConnections } from '../lib/server/database/connections';
import { migrate } from '../lib/server/database/migrate';
import { databaseFile } from '../lib/server/env';
import { loadReferenceFacts } from '../lib/server/reference/load-reference-facts';
import { today } from '../lib/server/today';
import { loadDemo } from './load-demo';
import { refuseCollection } from './refuse-collection';

const USAGE = `Makes the demo collection in an empty data folder.

  --today YYYY-MM-DD   the day from which everything is counted back (default: today)
  --help               this text

Environment: DATA_DIR, the data folder (./data). A folder that holds a collection is refused.`;

/** @returns the day asked for, or null when only the help is wanted */
function readArguments(words: readonly string[]): { today: string | null } | null {
  let day: string | null = null;
  for (let index = 0; index < words.length; index += 1) {
    const word = words[index];
    if (word === '--help') return null;
    if (word !== '--today') throw new Error(`'${word}' is not known here.\n\n${USAGE}`);
    index += 1;
    const value = words[index];
    if (!isCalendarDate(value)) throw new Error(`--today takes a date that exists, such as 2026-11-25, got ${value}.`);
    day = value;
  }
  return { today: day };
}

async function makeDemo(): Promise<string> {
  const asked = readArguments(process.argv.slice(2));
  if (asked === null) return USAGE;
  if (asked.today !== null) process.env.HILUM_TODAY = asked.today;
  const file = databaseFile();
  refuseCollectionIn(file);
  await migrate(file, path.resolve('prisma/migrations'));
  try {
    await loadReferenceFacts();
    const made = await loadDemo(today());
    return `Made the demo collection in ${file}: ${made.accessions} accessions, ${made.lots} lots, ${made.tests} tests.`;
  } finally {
    await closeConnections();
  }
}

/** Looks before anything is written, and does not even migrate what is there. */
function refuseCollectionIn(file: string): void {
  if (!existsSync(file)) return;
  const database = new Database(file, { readonly: true });
  try {
    refuseCollection(database);
  } finally {
    database.close();
  }
}

try {
  process.stdout.write(`${await makeDemo()}\n`);
} catch (error) {
  process.stderr.write(`${(error as Error).message}\n`);
  process.exit(1);
}
