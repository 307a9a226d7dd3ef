import { randomBytes } from 'node:crypto';
import type { Prisma } from '@/generated/prisma/client';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import type { ClassCounts } from '@/lib/domain/germination/seed-classes';
import { uuidV7 } from '@/lib/domain/ids/uuid-v7';
import type { Person } from '../auth/roles';

/** Counts written on a page rather than at the bench. */
const DEVICE = 'page';

export interface CountToWrite {
  trayId: string;
  dishId: string;
  on: string;
  /** null takes the day's count back */
  found: ClassCounts | null;
  /** counts of this dish and day that stand so far: all of them are replaced */
  replaces: readonly string[];
  countedBy?: string | undefined;
}

/** Writes down a count that replaces what stood of its dish and day; its id sorts after theirs, as replacing demands. */
export async function writeCount(tx: Prisma.TransactionClient, person: Person, count: CountToWrite): Promise<string> {
  const { trayId, dishId, on, found, replaces, countedBy } = count;
  const now = new Date();
  const highest = [...replaces].sort().at(-1) ?? null;
  const id = uuidV7({ now: now.getTime(), after: highest, random: randomBytes(8) });
  await tx.trayCount.create({
    data: {
      id,
      trayId,
      dishId,
      on,
      counted: found !== null,
      ...(found ?? NOTHING_FOUND),
      replaces: JSON.stringify(replaces),
      deviceId: DEVICE,
      madeAt: now,
      receivedAt: now,
      byId: person.id,
      byName: person.name,
      countedBy,
    },
  });
  return id;
}
