import type { Person } from '@/lib/server/auth/roles';
import { closeTray } from '@/lib/server/commands/close-tray';
import { setTrays } from '@/lib/server/commands/set-trays';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { VOLUNTEER } from './people';

/** A row of the form that sets trays: two dishes of 50 out of a packet, with days of its own. */
export const trayRow = (overrides: Record<string, unknown> = {}) => ({
  lot: 'L-2020-001',
  dishes: '2',
  seedsEach: '50',
  firstCountDays: '6',
  finalCountDays: '14',
  ...overrides,
});

export const setTraysOf = (
  trays: Record<string, unknown>[],
  overrides: Record<string, unknown> = {},
  person: Person = VOLUNTEER,
) => setTrays(person, { setOn: '2026-11-18', trays, ...overrides });

export const trayNumbered = (number: string) =>
  connections().reader.tray.findUniqueOrThrow({
    where: { number },
    include: { dishes: { orderBy: { position: 'asc' } }, withdrawal: true },
  });

/** Counts a tray to its end, all in one look, and closes it: so many normal, the rest dead. */
export async function closeWith(number: string, normal: number): Promise<void> {
  const tray = await trayNumbered(number);
  let left = normal;
  for (const dish of tray.dishes) {
    const grown = Math.min(left, dish.seeds);
    left -= grown;
    connections()
      .bulk.prepare(
        `INSERT INTO "TrayCount" ("id", "trayId", "dishId", "on", "normal", "dead", "deviceId", "madeAt", "byId", "byName")
         VALUES (?, ?, ?, ?, ?, ?, 'device-of-the-test', '2026-11-24T09:00:00.000+00:00', 'volunteer', 'Moss')`,
      )
      .run(newId(), tray.id, dish.id, '2026-11-24', grown, dish.seeds - grown);
  }
  await closeTray(VOLUNTEER, { trayId: tray.id });
}
