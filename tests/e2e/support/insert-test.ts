import path from 'node:path';
import Database from 'better-sqlite3';

interface TestToInsert {
  number: string;
  lot: string;
  setOn: string;
  finishedOn: string;
  /** no hard and no fresh seed in any */
  replicates: readonly { seeds: number; normal: number; abnormal: number; dead: number }[];
}

/** A finished test as somebody wrote it down from paper, in a bank's file, before its server has looked at it. */
export function insertTest(bankDirectory: string, { number, lot, setOn, finishedOn, replicates }: TestToInsert): void {
  const database = new Database(path.join(bankDirectory, 'hilum.db'));
  try {
    database
      .prepare(
        `INSERT INTO "GerminationTest" ("id", "number", "lotId", "setOn", "finishedOn", "byId")
         SELECT ?, ?, "id", ?, ?, 'volunteer' FROM "Lot" WHERE "number" = ?`,
      )
      .run(number, number, setOn, finishedOn, lot);
    const insert = database.prepare(
      `INSERT INTO "Replicate" ("testId", "position", "seeds", "normal", "abnormal", "hard", "fresh", "dead")
       VALUES (?, ?, ?, ?, ?, 0, 0, ?)`,
    );
    for (const [index, { seeds, normal, abnormal, dead }] of replicates.entries()) {
      insert.run(number, index + 1, seeds, normal, abnormal, dead);
    }
  } finally {
    database.close();
  }
}
