import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import Database from 'better-sqlite3';

/** A line that a child wrote: 'begin 3 move-packet', 'ack 3 412 {...}', 'refused 3 ...', 'ready', 'done'. */
export interface Line {
  word: string;
  turn: number;
  rest: string;
}

/** A program of this folder in a process of its own, told what to do on its input and heard on its output. */
export interface Child {
  /** Tells it to begin. */
  go(): void;
  /** Waits for a line, one that was written already included; fails when the child ends without it. */
  until(is: (line: Line) => boolean): Promise<Line>;
  /**
   * Stops the process where it is, looks whether it holds the write lock, kills it, and waits until it is gone.
   *
   * @returns whether it was in the middle of a transaction
   */
  kill(): Promise<{ midTransaction: boolean }>;
  /** Waits until it has ended by itself. */
  ended(): Promise<void>;
  isOver(): boolean;
  lines: Line[];
}

/** Its first write would take a second of compiling for speed that a process of half a second never sees. */
const START_FAST = ['--wasm-lazy-compilation', '--liftoff-only'];

export function startChild(
  file: string,
  { dataDirectory, args, env = {} }: { dataDirectory: string; args: string[]; env?: Record<string, string> },
): Child {
  const child = spawn(process.execPath, [...START_FAST, file, ...args], {
    env: { ...process.env, ...env, DATA_DIR: dataDirectory },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  const lines: Line[] = [];
  let waiting: (() => void)[] = [];
  let unfinished = '';
  let errors = '';
  let over = false;
  const wake = () => {
    const woken = waiting;
    waiting = [];
    for (const resume of woken) resume();
  };
  child.stdin.on('error', () => undefined);
  child.stderr.on('data', (chunk) => {
    errors += chunk;
  });
  child.stdout.on('data', (chunk) => {
    const parts = (unfinished + chunk).split('\n');
    unfinished = parts.pop() ?? '';
    for (const part of parts) lines.push(lineOf(part));
    wake();
  });
  const closed = once(child, 'close').then(() => {
    over = true;
    wake();
  });
  return {
    lines,
    go: () => void child.stdin.write('go\n'),
    until: async (is) => {
      for (let seen = 0; ; ) {
        for (; seen < lines.length; seen += 1) {
          const line = lines[seen] as Line;
          if (line.word === 'failed') throw new Error(`the child failed: ${line.rest}`);
          if (is(line)) return line;
        }
        if (over) throw new Error(`the child ended: ${errors.slice(-2000)} ${JSON.stringify(lines.slice(-3))}`);
        await new Promise<void>((resolve) => waiting.push(resolve));
      }
    },
    kill: async () => {
      child.kill('SIGSTOP');
      waitUntilStopped(child);
      const midTransaction = !over && isWriteLocked(`${dataDirectory}/hilum.db`);
      child.kill('SIGKILL');
      await closed;
      return { midTransaction };
    },
    ended: () => closed,
    isOver: () => over,
  };
}

/** A timer is only good to a millisecond or two, and a commit is over in less. */
export async function spin(ms: number): Promise<void> {
  const until = performance.now() + ms;
  while (performance.now() < until) await new Promise((resolve) => setImmediate(resolve));
}

/** Waits until some process is in the middle of a write, or the child has said how it ended, or is gone. */
export async function untilWriteLocked(child: Child, file: string): Promise<void> {
  const probe = new Database(file, { timeout: 0, fileMustExist: true });
  const isThrough = () => child.isOver() || child.lines.some(({ word }) => word === 'ack' || word === 'failed');
  while (!isLocked(probe) && !isThrough()) await spin(1);
  probe.close();
}

function lineOf(text: string): Line {
  const [word = '', turn = '', ...rest] = text.split(' ');
  return { word, turn: Number(turn), rest: rest.join(' ') };
}

/** A stop is noticed at the next turn of the system's clock; only Linux says when. */
function waitUntilStopped({ pid }: ChildProcess): void {
  const status = `/proc/${pid}/stat`;
  const until = Date.now() + 1000;
  while (Date.now() < until && existsSync(status)) {
    const state = readFileSync(status, 'utf8').split(') ')[1]?.[0];
    if (state === 'T' || state === 'Z') return;
  }
}

/** Whether some process is in the middle of a write. Opened and closed again, so that nobody has the file open after. */
function isWriteLocked(file: string): boolean {
  const probe = new Database(file, { timeout: 0, fileMustExist: true });
  const locked = isLocked(probe);
  probe.close();
  return locked;
}

function isLocked(probe: Database.Database): boolean {
  try {
    probe.exec('BEGIN IMMEDIATE');
    probe.exec('ROLLBACK');
    return false;
  } catch (error) {
    if ((error as { code?: string }).code === 'SQLITE_BUSY') return true;
    throw error;
  }
}
