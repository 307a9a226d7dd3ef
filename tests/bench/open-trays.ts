/**
 * Two hundred open trays of four dishes for measuring the bench, due today, in the bank of DATA_DIR.
 * Prints one line of JSON: the numbers of the trays.
 */
import path from 'node:path';
import Database from 'better-sqlite3';
import { insertTray } from '../support/insert-tray';

const TRAYS = 200;
const FIRST_NUMBER = 9001;

const directory = process.env.DATA_DIR;
if (!directory) throw new Error('DATA_DIR is needed');
const database = new Database(path.join(directory, 'hilum.db'));
const lots = database.prepare<[], string>('SELECT "number" FROM "Lot" ORDER BY "number"').pluck().all();
const numbers = Array.from({ length: TRAYS }, (_, index) => {
  const { number } = insertTray(database, {
    number: `T-${FIRST_NUMBER + index}`,
    lotNumber: lots[index % lots.length] as string,
    place: `Shelf ${String(1 + Math.floor(index / 20)).padStart(2, '0')}`,
    dishes: [50, 50, 50, 50],
    countEveryDays: 2,
    takesSeed: false,
    counts: [1, 2, 3, 4].map((dish) => ({ on: '2026-11-23', dish, found: { normal: 8 + dish } })),
  });
  return number;
});
database.close();
process.stdout.write(`${JSON.stringify(numbers)}\n`);
