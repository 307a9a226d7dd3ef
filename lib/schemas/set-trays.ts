/** Input of setting trays: many at once, the next group of one, and giving one up. */
import { z } from 'zod';
import { groupPlan } from '../domain/germination/plan/group-plan';
import { dishesFor, GROUP_SEEDS, sizeKey, TEST_SIZES } from '../domain/germination/plan/test-sizes';
import { idOf, tickBox } from './choice-field';
import {
  blankToUndefined,
  countBetween,
  longText,
  lotNumber,
  optionalField,
  pastOrTodayDate,
  proportion,
  seedCount,
  shortText,
} from './field-schemas';
import { REPLICATE_SEEDS } from './germination-test';

/** Trays set in one step: more than an afternoon's work. */
export const MOST_TRAYS_AT_ONCE = 60;
/** Dishes of one tray. */
const DISHES = { min: 1, max: 16 } as const;
/** Days of a test: slow tree seed takes the best part of a year, a slip takes more. */
const TEST_DAYS = { min: 1, max: 365 } as const;
const PRECHILL_DAYS = { min: 0, max: 180 } as const;

/** A test in groups, in place of a fixed size. */
export const IN_GROUPS = 'groups';
const SIZES = [...TEST_SIZES.map(sizeKey), IN_GROUPS];

/** Which seed: 'packet:<id>' takes it out now, 'taken:<id>' names a line of the ledger by which it went out before. */
const seedFrom = z
  .preprocess(
    blankToUndefined,
    z.string({ error: 'Choose the packet.' }).regex(/^(packet|taken):.{1,100}$/, 'Choose the packet.'),
  )
  .transform((value) => {
    const [kind, id] = [value.slice(0, value.indexOf(':')), value.slice(value.indexOf(':') + 1)];
    return { kind: kind as 'packet' | 'taken', id };
  });

const trayFields = z.object({
  lot: lotNumber,
  seedFrom,
  /** '4x25', or in groups; dishes and seeds below hold instead where they are filled in */
  size: z.preprocess(blankToUndefined, z.enum(SIZES, { error: 'Choose how many seeds.' }).optional()),
  dishes: optionalField(countBetween(DISHES, 'dishes')),
  seedsEach: optionalField(countBetween(REPLICATE_SEEDS, 'seeds')),
  /** what the plan in groups is made for; see groupPlan */
  line: optionalField(proportion),
  mostSeeds: optionalField(seedCount),
  /** key of methodChoices */
  method: optionalField(z.string().max(200, 'Choose the method.')),
  /** left empty: as the method says */
  firstCountDays: optionalField(countBetween(TEST_DAYS, 'days')),
  finalCountDays: optionalField(countBetween(TEST_DAYS, 'days')),
  prechillDays: optionalField(countBetween(PRECHILL_DAYS, 'days')).transform((days) => days ?? 0),
  /** left empty: only the first and the final count */
  countEveryDays: optionalField(countBetween(TEST_DAYS, 'days')),
  preTreatment: optionalField(shortText),
  notes: optionalField(longText),
  /** set though another tray of the lot stands already */
  anyway: tickBox,
});

const trayRow = trayFields.transform((row, context) => {
  const { size, dishes, seedsEach, line, mostSeeds, ...rest } = row;
  const refuse = (path: string, message: string) => {
    context.addIssue({ code: 'custom', path: [path], message });
    return z.NEVER;
  };
  const { firstCountDays: first, finalCountDays: final } = rest;
  if (first !== undefined && final !== undefined && final < first) {
    refuse('finalCountDays', `The last count cannot be before the first, after ${first} days.`);
  }
  if (dishes !== undefined || seedsEach !== undefined) {
    if (dishes === undefined) return refuse('dishes', 'Write how many dishes too.');
    if (seedsEach === undefined) return refuse('seedsEach', 'Write how many seeds lie in each dish too.');
    return { ...rest, dishes: Array.from({ length: dishes }, () => seedsEach), plan: null };
  }
  if (size === undefined) return refuse('size', 'Choose how many seeds.');
  if (size !== IN_GROUPS) {
    const [count = 0, each = 0] = size.split('x').map(Number);
    return { ...rest, dishes: Array.from({ length: count }, () => each), plan: null };
  }
  const plan = line !== undefined && line > 0 && line < 1 ? groupPlan(line, mostSeeds ?? 0) : null;
  if (!plan) return refuse('size', 'No plan in groups can be made for this lot: choose a number of seeds.');
  return { ...rest, dishes: dishesFor(GROUP_SEEDS), plan };
});

/** A lot that was ticked away is no tray, whatever else stands in its row. */
function leftOutToUndefined(row: unknown): unknown {
  return typeof row === 'object' && row !== null && (row as Record<string, unknown>).leaveOut === 'on'
    ? undefined
    : row;
}

const trays = z.preprocess(
  (rows) => (Array.isArray(rows) ? Array.from(rows) : rows),
  z
    .array(z.preprocess(leftOutToUndefined, trayRow.optional()), { error: 'Choose at least one lot.' })
    .max(MOST_TRAYS_AT_ONCE, `Set at most ${MOST_TRAYS_AT_ONCE} trays at once.`)
    .refine((rows) => rows.some((row) => row !== undefined), 'Every lot is left out: keep at least one.'),
);

/**
 * Trays to be set together.
 *
 * @param today  'YYYY-MM-DD' at the bank
 * @returns a schema; messages about a lot stand at 'trays.<row>.<field>', rows counted as sent; rows left out are undefined
 * Checked in tests/schemas/set-trays.test.ts
 */
export const setTraysInput = (today: string) =>
  z.object({ setOn: pastOrTodayDate(today), place: optionalField(shortText), trays });

export type TrayToSet = NonNullable<z.output<ReturnType<typeof setTraysInput>>['trays'][number]>;

/** The next group of a test in groups. @param today  'YYYY-MM-DD' at the bank */
export const setNextGroupInput = (today: string) =>
  z.object({
    seriesId: idOf('test'),
    seedFrom,
    setOn: pastOrTodayDate(today),
    place: optionalField(shortText),
    notes: optionalField(longText),
  });

export const giveUpTrayInput = z.object({
  trayId: idOf('tray'),
  reason: shortText,
});
