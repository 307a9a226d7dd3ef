import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { migrate } from '@/lib/server/database/migrate';
import { refusal } from '../../support/refusal';

let folder: string;
const file = () => path.join(folder, 'data', 'hilum.db');
const migrations = () => path.join(folder, 'migrations');

function write(name: string, sql: string): void {
  mkdirSync(path.join(migrations(), name), { recursive: true });
  writeFileSync(path.join(migrations(), name, 'migration.sql'), sql);
}

function ask<Row>(sql: string): Row[] {
  const database = new Database(file(), { readonly: true });
  const rows = database.prepare<[], Row>(sql).all();
  database.close();
  return rows;
}

const recorded = () =>
  ask<{ name: string }>('SELECT migration_name AS name FROM _prisma_migrations').map(({ name }) => name);

describe('bringing a collection up to date', () => {
  beforeEach(() => {
    folder = mkdtempSync(path.join(tmpdir(), 'hilum-migrate-'));
    write('20260101000000_seeds', 'CREATE TABLE seeds (id INTEGER PRIMARY KEY, n INTEGER NOT NULL);');
  });
  afterEach(() => rmSync(folder, { recursive: true, force: true }));

  it('makes the file, in write-ahead mode, and does nothing the second time', async () => {
    expect(await migrate(file(), migrations())).toEqual({
      created: true,
      applied: ['20260101000000_seeds'],
      backup: null,
    });
    expect(await migrate(file(), migrations())).toEqual({ created: false, applied: [], backup: null });
    expect(ask('PRAGMA journal_mode')).toEqual([{ journal_mode: 'wal' }]);
    expect(recorded()).toEqual(['20260101000000_seeds']);
  });

  it('applies changes in the order of their names', async () => {
    write('20260201000000_colour', 'ALTER TABLE seeds ADD COLUMN colour TEXT;');
    expect((await migrate(file(), migrations())).applied).toEqual(['20260101000000_seeds', '20260201000000_colour']);
  });

  it('copies the collection before it changes it', async () => {
    await migrate(file(), migrations());
    const database = new Database(file());
    database.exec('INSERT INTO seeds (n) VALUES (42)');
    database.close();
    write('20260201000000_colour', 'ALTER TABLE seeds ADD COLUMN colour TEXT;');
    const { applied, backup } = await migrate(file(), migrations());
    expect(applied).toEqual(['20260201000000_colour']);
    expect(existsSync(backup as string)).toBe(true);
    const copy = new Database(backup as string, { readonly: true });
    expect(copy.prepare('SELECT * FROM seeds').all()).toEqual([{ id: 1, n: 42 }]);
    copy.close();
  });

  it('undoes a change that fails half-way and does not record it', async () => {
    await migrate(file(), migrations());
    write('20260201000000_broken', 'CREATE TABLE half (id INTEGER); CREATE TABLE seeds (id INTEGER);');
    await expect(migrate(file(), migrations())).rejects.toThrow(/already exists/);
    expect(ask(`SELECT name FROM sqlite_master WHERE name = 'half'`)).toEqual([]);
    expect(recorded()).toEqual(['20260101000000_seeds']);
  });

  it('undoes a change that would break links between records', async () => {
    await migrate(file(), migrations());
    write(
      '20260201000000_orphans',
      'CREATE TABLE jars (id INTEGER PRIMARY KEY, seed INTEGER REFERENCES seeds(id)); INSERT INTO jars (seed) VALUES (7);',
    );
    expect((await refusal(migrate(file(), migrations()))).userMessage).toMatch(/would break links/);
    expect(recorded()).toEqual(['20260101000000_seeds']);
  });

  it('refuses a collection that a newer program has changed', async () => {
    write('20270101000000_future', 'CREATE TABLE future (id INTEGER);');
    await migrate(file(), migrations());
    rmSync(path.join(migrations(), '20270101000000_future'), { recursive: true });
    expect((await refusal(migrate(file(), migrations()))).userMessage).toMatch(/newer Hilum/);
  });

  it('refuses a change whose file is no longer the one that was applied', async () => {
    await migrate(file(), migrations());
    write('20260101000000_seeds', 'CREATE TABLE seeds (id INTEGER PRIMARY KEY);');
    expect((await refusal(migrate(file(), migrations()))).userMessage).toMatch(/differs from the one/);
  });
});
