/**
 * What a phone at the bench sends: counts, notes, photographs (lib/schemas/bench-wire.ts says how). Each entry is looked
 * at by itself, so that a broken one does not hold up the others.
 */
import { z } from 'zod';
import { isCalendarDate } from '../domain/calendar/calendar-date';
import { SEED_CLASSES } from '../domain/germination/seed-classes';
import { isUuidV7 } from '../domain/ids/uuid-v7';
import { MOST_ENTRIES_SENT } from './bench-wire';
import { LONG_TEXT_LENGTH, SHORT_TEXT_LENGTH } from './limits';

export const MAX_ENTRIES_BYTES = 4 * 1024 * 1024;
export const MAX_PHOTO_BYTES = 15 * 1024 * 1024;
/** seeds of one class in one dish on one day: catches a slip of the finger on the keypad, no dish holds as many */
const MOST_FOUND = 10_000;
/** positions that are drawn as tapped */
const MOST_PLACES = 2_000;

const NOT_READ = 'Hilum cannot read this entry. Note it on paper and enter it again.';
const NUMBER = `A count is a whole number of seeds between 0 and ${MOST_FOUND}. Enter it again.`;

/** Of 2199 or before: everybody's later ids must come after it, and there must be some left. */
const LAST_ID = '0699e991-a800';
const id = z.custom<string>((value) => isUuidV7(value) && value < LAST_ID, NOT_READ);
const rowId = z.string(NOT_READ).min(1, NOT_READ).max(100, NOT_READ);
const day = z
  .string(NOT_READ)
  .refine(isCalendarDate, 'The date of this entry does not exist: check the date of the phone.');
const instant = z.iso.datetime(NOT_READ);
const number = z.int(NUMBER).min(0, NUMBER).max(MOST_FOUND, NUMBER);
const place = z.int().min(0).max(MOST_FOUND);

export const deviceIdSchema = z.string(NOT_READ).regex(/^[\w-]{8,64}$/, NOT_READ);

const found = z.object(
  Object.fromEntries(SEED_CLASSES.map((seedClass) => [seedClass, number])) as Record<
    (typeof SEED_CLASSES)[number],
    typeof number
  >,
  NUMBER,
);

/** For drawing only: a count is not lost over it. */
const places = z.partialRecord(z.enum(SEED_CLASSES), z.array(place).max(MOST_PLACES)).nullable().catch(null);

const dish = z.int(NOT_READ).min(1, NOT_READ).max(100, NOT_READ).nullable();

const count = z.object({
  kind: z.literal('count'),
  id,
  trayId: rowId,
  dishId: rowId,
  on: day,
  found: found.nullable(),
  replaces: z.array(rowId, NOT_READ).max(100, NOT_READ),
  places,
  madeAt: instant,
  countedBy: z.string().trim().min(1).max(SHORT_TEXT_LENGTH.max).nullable().catch(null),
});

const note = z.object({
  kind: z.literal('note'),
  id,
  trayId: rowId,
  dish,
  on: day,
  text: z
    .string(NOT_READ)
    .trim()
    .min(1, 'The note is empty.')
    .max(LONG_TEXT_LENGTH.max, `A note has at most ${LONG_TEXT_LENGTH.max} characters: enter it in two parts.`),
  madeAt: instant,
});

/** One entry; every message is for whoever entered it. */
export const sentEntrySchema = z.discriminatedUnion('kind', [count, note], NOT_READ);
export type EntryToKeep = z.output<typeof sentEntrySchema>;
export type CountToKeep = z.output<typeof count>;
export type NoteToKeep = z.output<typeof note>;

/** A batch: it must be clear which entry is meant, and what is in it is asked one by one. */
export const sentEntriesSchema = z.object({
  deviceId: deviceIdSchema,
  entries: z.array(z.looseObject({ id })).min(1).max(MOST_ENTRIES_SENT),
});

/** What a photograph's address says of it. */
export const sentPhotoSchema = z.object({
  id,
  deviceId: deviceIdSchema,
  trayId: rowId,
  dish,
  on: day,
  madeAt: instant,
});
export type PhotoToKeep = z.output<typeof sentPhotoSchema>;
