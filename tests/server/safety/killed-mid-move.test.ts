import Database from 'better-sqlite3';
import { expect, it } from 'vitest';
import { randomFor } from '@/seed-demo/random';
import { complaintsAbout } from '@/tests/support/safety/bank-agrees';
import { useBundledChild } from '@/tests/support/safety/bundle-child';
import { fillBusyBank } from '@/tests/support/safety/busy-bank';
import { type Child, spin, startChild } from '@/tests/support/safety/child';
import { judgementsFromScratch } from '@/tests/support/safety/judgements-agree';
import { useTestBank } from '@/tests/support/test-bank';

/** How often; more with HILUM_KILLS=1000. */
const KILLS = Number(process.env.HILUM_KILLS ?? 110);
const STREAM = process.env.HILUM_KILL_STREAM ?? 'hands';
const TODAY = '2026-11-25';

const bank = useTestBank({ today: TODAY });
const program = useBundledChild('hands-in-child.ts');
const chance = randomFor(`killing ${STREAM}`);

const start = (kill: number) =>
  startChild(program.file, { dataDirectory: bank.directory, args: [`${STREAM} ${kill}`] });

interface Kill {
  midTransaction: boolean;
  /** the command that was begun and not acknowledged */
  unfinished: string | null;
  acknowledged: number[];
}

/** Lets it work for a few commands, then kills it somewhere in the next one or a little after. */
async function killAtRandom(child: Child): Promise<Kill> {
  const turn = chance.wholeBetween(0, 4);
  child.go();
  await child.until(({ word, turn: now }) => word === 'begin' && now >= turn);
  await spin(chance.between(0, 1.2) * (usualMs[turn] ?? 30));
  const { midTransaction } = await child.kill();
  const failed = child.lines.find(({ word }) => word === 'failed');
  if (failed) throw new Error(failed.rest);
  const answered = new Set(child.lines.filter(({ word }) => word !== 'begin').map(({ turn: now }) => now));
  const begun = child.lines.filter(({ word, turn: now }) => word === 'begin' && !answered.has(now));
  const acks = child.lines.filter(({ word }) => word === 'ack').map(({ turn: now, rest }) => [now, ...rest.split(' ')]);
  for (const [now, , ms] of acks) usualMs[Number(now)] = 0.8 * (usualMs[Number(now)] ?? Number(ms)) + 0.2 * Number(ms);
  return {
    midTransaction,
    unfinished: begun.at(-1)?.rest ?? null,
    acknowledged: acks.filter(([now]) => Number(now) > 0).map(([, audit]) => Number(audit)),
  };
}

/** How long a process's first, second ... commands took so far, milliseconds: where to strike is drawn from it. */
const usualMs: number[] = [];

it(
  `leaves ledger, places, histories and audit whole when the process is killed, ${KILLS} times`,
  async () => {
    await fillBusyBank();
    const seen = { midTransaction: 0, midCommand: 0, between: 0, kept: 0, commands: 0, stale: 0 };
    let lastAudit = auditEntries().at(-1)?.id ?? 0;
    let child = start(0);
    for (let kill = 1; kill <= KILLS; kill += 1) {
      await child.until(({ word }) => word === 'ready');
      const next = start(kill);
      const { midTransaction, unfinished, acknowledged } = await killAtRandom(child);
      child = next;

      const database = new Database(bank.file);
      expect(complaintsAbout(database), `after kill ${kill}`).toEqual([]);
      const written = auditEntries(database).filter(({ id }) => id > lastAudit);
      const ids = written.map(({ id }) => id);
      expect(ids, `kill ${kill} lost what was acknowledged`).toEqual(expect.arrayContaining(acknowledged));
      const unasked = written.filter(({ id }) => id > (acknowledged.at(-1) ?? lastAudit));
      expect(new Set(unasked.map(({ command }) => command)).size).toBeLessThanOrEqual(1);
      for (const { command } of unasked) expect(command).toBe(unfinished);
      const judged = await judgementsFromScratch(database, TODAY);
      expect(judged.kept, `kill ${kill} left a judgement that is wrong and not marked`).toEqual(judged.fresh);
      database.close();

      lastAudit = ids.at(-1) ?? lastAudit;
      seen.commands += acknowledged.length;
      seen.stale += judged.stale > 0 ? 1 : 0;
      seen.kept += unasked.length > 0 ? 1 : 0;
      if (midTransaction) seen.midTransaction += 1;
      else if (unfinished) seen.midCommand += 1;
      else seen.between += 1;
      if (kill % 50 === 0 || kill === KILLS)
        console.info(`killed-mid-move ${JSON.stringify({ kills: kill, ...seen })}`);
    }
    await child.kill();
    // Kills that all fell between transactions would show nothing.
    expect(seen.midTransaction).toBeGreaterThan(KILLS / 5);
  },
  60_000 + KILLS * 6_000,
);

function auditEntries(open?: Database.Database): { id: number; command: string }[] {
  const database = open ?? new Database(bank.file, { readonly: true });
  const entries = database
    .prepare<[], { id: number; command: string }>(`SELECT "id", "command" FROM "AuditEntry" ORDER BY "id"`)
    .all();
  if (!open) database.close();
  return entries;
}
