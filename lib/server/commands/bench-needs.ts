import type { Prisma } from '@/generated/prisma/client';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { SEED_CLASSES } from '@/lib/domain/germination/seed-classes';
import type { CountToKeep, NoteToKeep } from '@/lib/schemas/bench-entries';
import type { Person } from '../auth/roles';

/** A tray as far as entries from the bench ask for it. */
export interface TrayAtBench {
  id: string;
  number: string;
  setOn: string;
  status: string;
  dishes: { id: string; position: number }[];
}

interface Sender {
  deviceId: string;
  person: Person;
}

const COUNT_SELECT = {
  ...{ id: true, trayId: true, dishId: true, on: true, counted: true, places: true, replaces: true },
  ...{ normal: true, abnormal: true, hard: true, fresh: true, dead: true, deviceId: true, madeAt: true },
} as const;
const NOTE_SELECT = {
  ...{ id: true, trayId: true, dish: true, on: true, kind: true, text: true, deviceId: true, madeAt: true },
} as const;

/**
 * What there is already of what entries name: three statements, however many entries.
 *
 * @param entries  not yet looked at: any field may be anything
 * @returns trays by id, and rows of counts and notes by id
 */
export async function loadBenchNeeds(
  tx: Prisma.TransactionClient,
  entries: readonly Record<string, unknown>[],
): Promise<{ trays: Map<string, TrayAtBench>; known: Map<string, object> }> {
  const texts = (values: unknown[]) => [...new Set(values.filter((value) => typeof value === 'string'))];
  const ids = texts(entries.flatMap(({ id, replaces }) => [id, ...(Array.isArray(replaces) ? replaces : [])]));
  const trays = await tx.tray.findMany({
    where: { id: { in: texts(entries.map(({ trayId }) => trayId)) } },
    select: {
      ...{ id: true, number: true, setOn: true, status: true },
      dishes: { select: { id: true, position: true }, orderBy: { position: 'asc' } },
    },
  });
  const counts = await tx.trayCount.findMany({ where: { id: { in: ids } }, select: COUNT_SELECT });
  const notes = await tx.trayNote.findMany({ where: { id: { in: ids } }, select: NOTE_SELECT });
  return {
    trays: new Map(trays.map((tray) => [tray.id, tray])),
    known: new Map([...counts, ...notes].map((row) => [row.id, row])),
  };
}

export function countRow(entry: CountToKeep, { deviceId, person }: Sender): Prisma.TrayCountCreateManyInput {
  const { id, trayId, dishId, on, found, places, replaces, madeAt, countedBy } = entry;
  const classes = Object.fromEntries(SEED_CLASSES.map((seedClass) => [seedClass, found?.[seedClass] ?? 0]));
  return {
    ...{ id, trayId, dishId, on, counted: found !== null, ...classes, deviceId, madeAt: new Date(madeAt) },
    places: places === null ? null : JSON.stringify(places),
    replaces: JSON.stringify([...new Set(replaces)].sort()),
    byId: person.id,
    byName: person.name,
    countedBy: countedBy === person.name ? null : countedBy,
  };
}

export function noteRow(entry: NoteToKeep, { deviceId, person }: Sender): Prisma.TrayNoteCreateManyInput {
  const { id, trayId, dish, on, text, madeAt } = entry;
  const made = { deviceId, madeAt: new Date(madeAt), byId: person.id, byName: person.name };
  return { id, trayId, dish, on, kind: 'note', text, ...made };
}

/** Whether a row says what a known one says. Who sent it does not count: after a lost answer somebody else may. */
export function sayTheSameEntry(known: object, row: object): boolean {
  const select = 'dishId' in known ? COUNT_SELECT : NOTE_SELECT;
  if ('dishId' in known !== 'dishId' in row) return false;
  const plain = (value: unknown) => (value instanceof Date ? value.toISOString() : (value ?? null));
  return Object.keys(select).every(
    (field) => plain(known[field as keyof object]) === plain(row[field as keyof object]),
  );
}

export const UNKNOWN_TRAY = 'This tray is not in the collection. Note it on paper and ask a steward.';
export const USED_MARK = 'Something else was sent under the same mark before. Look at the dish and enter it again.';

/** Why a day cannot be; null when it can. A phone's calendar may be a day ahead of the server's, at midnight or abroad. */
export function dayProblem(tray: TrayAtBench, on: string, today: string): string | null {
  if (on < tray.setOn) return `Tray ${tray.number} was set on ${tray.setOn}; this is for ${on}, before that.`;
  if (on > addDays(today, 1)) return `This is for ${on}, and that day is still to come. Check the date of the phone.`;
  return null;
}

/** Why a dish cannot be; null when it can, and for a whole tray. */
export function noSuchDish(tray: TrayAtBench, dish: number | null): string | null {
  if (dish === null || tray.dishes.some(({ position }) => position === dish)) return null;
  return `Tray ${tray.number} has no such dish. Check the label of the tray and enter it again.`;
}
