import { createHash, randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import Database from 'better-sqlite3';
import { AppError } from '../app-error';

/**
 * Applies the SQL files of prisma/migrations to the user's database: a backup first, one transaction a migration, each
 * recorded in `_prisma_migrations` with the sha256 of its file, as Prisma does, so that its own tools agree.
 */
const HISTORY_TABLE = `CREATE TABLE IF NOT EXISTS "_prisma_migrations" (
    "id"                    TEXT PRIMARY KEY NOT NULL,
    "checksum"              TEXT NOT NULL,
    "finished_at"           DATETIME,
    "migration_name"        TEXT NOT NULL,
    "logs"                  TEXT,
    "rolled_back_at"        DATETIME,
    "started_at"            DATETIME NOT NULL DEFAULT current_timestamp,
    "applied_steps_count"   INTEGER UNSIGNED NOT NULL DEFAULT 0
)`;

export interface MigrationOutcome {
  created: boolean;
  applied: string[];
  backup: string | null;
}

/**
 * @param file                 absolute path of the database, made if missing
 * @param migrationsDirectory  folder with <timestamp>_<what_changed>/migration.sql
 * @throws AppError 'refused' when the database is newer than this program, or an applied file has been changed since
 */
export async function migrate(file: string, migrationsDirectory: string): Promise<MigrationOutcome> {
  const created = !existsSync(file);
  mkdirSync(path.dirname(file), { recursive: true });
  const database = new Database(file, { timeout: 10_000 });
  try {
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.exec(HISTORY_TABLE);
    const pending = pendingMigrations(database, migrationsDirectory);
    const backup = pending.length > 0 && !created ? await backUp(database, file) : null;
    for (const migration of pending) applyOne(database, migration);
    return { created, applied: pending.map((migration) => migration.name), backup };
  } finally {
    database.close();
  }
}

interface MigrationFile {
  name: string;
  sql: string;
  checksum: string;
}

function readMigrations(directory: string): MigrationFile[] {
  return readdirSync(directory, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort()
    .map((name) => {
      const sql = readFileSync(path.join(directory, name, 'migration.sql'), 'utf8');
      return { name, sql, checksum: createHash('sha256').update(sql).digest('hex') };
    });
}

function pendingMigrations(database: Database.Database, directory: string): MigrationFile[] {
  const known = readMigrations(directory);
  const applied = new Map(
    database
      .prepare<[], { migration_name: string; checksum: string }>(
        'SELECT migration_name, checksum FROM "_prisma_migrations" WHERE finished_at IS NOT NULL AND rolled_back_at IS NULL',
      )
      .all()
      .map((row) => [row.migration_name, row.checksum]),
  );
  for (const [name, checksum] of applied) {
    const file = known.find((migration) => migration.name === name);
    if (!file) {
      throw new AppError(
        'refused',
        `This collection was last opened by a newer Hilum (it has the change '${name}'). Use that version, or restore a backup.`,
      );
    }
    if (file.checksum !== checksum) {
      throw new AppError(
        'refused',
        `The change '${name}' differs from the one this collection was built with. Restore the program's files.`,
      );
    }
  }
  return known.filter((migration) => !applied.has(migration.name));
}

async function backUp(database: Database.Database, file: string): Promise<string> {
  const stamp = new Date().toISOString().replace(/[:.]/g, '-');
  const backup = path.join(path.dirname(file), 'backups', `before-change-${stamp}.db`);
  mkdirSync(path.dirname(backup), { recursive: true });
  await database.backup(backup);
  return backup;
}

function applyOne(database: Database.Database, migration: MigrationFile): void {
  // Table rebuilds in a migration need foreign keys off, and the pragma does nothing inside a transaction.
  database.pragma('foreign_keys = OFF');
  database.transaction(() => {
    database.exec(migration.sql);
    const broken = database.pragma('foreign_key_check') as unknown[];
    if (broken.length > 0)
      throw new AppError('refused', `The change '${migration.name}' would break links between records; it was undone.`);
    database
      .prepare(
        `INSERT INTO "_prisma_migrations" (id, checksum, finished_at, migration_name, started_at, applied_steps_count)
         VALUES (?, ?, ?, ?, ?, 1)`,
      )
      .run(randomUUID(), migration.checksum, new Date().toISOString(), migration.name, new Date().toISOString());
  })();
  database.pragma('foreign_keys = ON');
}
