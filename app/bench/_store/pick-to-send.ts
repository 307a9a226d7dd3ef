import type { OwnCount, OwnEntry } from './own-entries';

export interface ToPickFrom {
  waiting: readonly OwnEntry[];
  picked: readonly OwnEntry[];
  /** whether the server has, or will have, this count: it was picked, or is among what was read */
  isSent(id: string, trayId: string): boolean;
  isRefused(id: string): boolean;
}

export interface Choice {
  /** everything to be sent now, in order */
  batch: OwnEntry[];
  /** of these, those that were only picked now, as they will be sent */
  nowPicked: OwnEntry[];
  /** waiting entries that are not sent at all */
  dropped: string[];
}

/**
 * What is sent next: what was picked before and never answered, then what waits, in order of ids, so that whatever a count
 * replaces comes before it.
 *
 * A count says here for good what it replaces. An own count that was written over while it waited is gone and not named,
 * unless another tab had picked it in that moment. What takes back something that was never sent is not sent either.
 *
 * @param most  entries at once
 * Checked in tests/app/bench/create-bench.test.ts and devices-agree.test.ts
 */
export function pickToSend({ waiting, picked, isSent, isRefused }: ToPickFrom, most: number): Choice {
  const batch = inOrder(picked).slice(0, most);
  const dropped: string[] = [];
  const nowPicked: OwnEntry[] = [];
  const picking = new Set(picked.map(({ id }) => id));
  const sentNow = (id: string, trayId: string) => picking.has(id) || isSent(id, trayId);
  for (const entry of inOrder(waiting)) {
    if (batch.length + nowPicked.length >= most) break;
    const final = entry.kind === 'count' ? withFinalReplaces(entry, sentNow, isRefused) : entry;
    if (final.kind === 'count' && final.found === null && final.replaces.length === 0) {
      dropped.push(final.id);
      continue;
    }
    picking.add(final.id);
    nowPicked.push(final);
  }
  return { batch: inOrder([...batch, ...nowPicked]), nowPicked, dropped };
}

function withFinalReplaces(
  count: OwnCount,
  isSent: ToPickFrom['isSent'],
  isRefused: ToPickFrom['isRefused'],
): OwnCount {
  const amended = count.amends.filter((id) => isSent(id, count.trayId));
  const replaces = [...new Set([...count.replaces, ...amended])].filter((id) => !isRefused(id)).sort();
  return { ...count, replaces, amends: [] };
}

const inOrder = (entries: readonly OwnEntry[]) =>
  [...entries].sort((one, other) => (one.id < other.id ? -1 : one.id > other.id ? 1 : 0));
