import 'server-only';

/**
 * One write at a time in this process. SQLite has one writer, and better-sqlite3 waits for its lock by blocking the
 * thread: two writers in one process would wait for each other until the busy timeout. A second process (command
 * line) waits by that timeout.
 */
const holder = globalThis as typeof globalThis & { hilumWriteQueue?: Promise<unknown> };

export function enqueueWrite<Result>(task: () => Promise<Result>): Promise<Result> {
  const before = holder.hilumWriteQueue ?? Promise.resolve();
  const result = before.then(task, task);
  holder.hilumWriteQueue = result.catch(() => undefined);
  return result;
}
