/**
 * What may be recorded of a germination test: the lot, the days, and every replicate with its classes.
 *
 * A correction is a whole new test that names the one it corrects; the old one stays as it was written.
 */
import { z } from 'zod';
import { daysBetween } from '../domain/calendar/calendar-date';
import {
  blankToUndefined,
  countBetween,
  longText,
  lotNumber,
  optionalField,
  pastOrTodayDate,
  seedCount,
  shortText,
} from './field-schemas';
import { REPLICATE_COUNT } from './limits';

/** seeds in one dish or paper: far more than anybody counts, and far fewer than a slip of the keyboard makes */
export const REPLICATE_SEEDS = { min: 1, max: 10_000 } as const;

/** days from setting to the last count; slow seed that is chilled in between takes a year, a wrong year takes more */
const LONGEST_TEST_DAYS = 730;

const CORRECTION_REASON_NEEDED = 'Say what was wrong with the test as first written.';
const recordId = z.string().max(64, 'This does not name anything in the collection.');
const noneWhenBlank = optionalField(seedCount).transform((seeds) => seeds ?? 0);

const normalCount = z
  .unknown()
  .refine((value) => blankToUndefined(value) !== undefined, {
    error: 'Write how many became normal seedlings, 0 if none did.',
    abort: true,
  })
  .pipe(seedCount);

/**
 * One replicate. Normal seedlings must be said, 0 if there were none; abnormal, hard and fresh left blank mean none;
 * dead left blank means all that is left of the seeds set.
 */
const replicateRow = z
  .object({
    seeds: countBetween(REPLICATE_SEEDS, 'seeds'),
    normal: normalCount,
    abnormal: noneWhenBlank,
    hard: noneWhenBlank,
    fresh: noneWhenBlank,
    dead: optionalField(seedCount),
  })
  .transform((row, context) => {
    const { seeds, normal, abnormal, hard, fresh } = row;
    const counted = normal + abnormal + hard + fresh;
    const dead = row.dead ?? Math.max(0, seeds - counted);
    const classed = counted + dead;
    if (classed > seeds) context.addIssue(`The classes add to ${classed}, but only ${seeds} seeds were set.`);
    if (classed < seeds) {
      context.addIssue(
        `The classes add to ${classed} of the ${seeds} seeds set. Leave "dead" blank to count the rest as dead.`,
      );
    }
    return { seeds, normal, abnormal, hard, fresh, dead };
  });

/** A row of the form in which nothing was written is no replicate. */
function blankRowToUndefined(row: unknown): unknown {
  if (typeof row !== 'object' || row === null) return blankToUndefined(row);
  return Object.values(row).every((value) => blankToUndefined(value) === undefined) ? undefined : row;
}

// Blank rows are taken out only after checking, so that each message stands beside the row in which it was typed.
const replicates = z.preprocess(
  // The form's rows arrive as an array with holes where a row was left out.
  (rows) => (Array.isArray(rows) ? Array.from(rows) : rows),
  z
    .array(z.preprocess(blankRowToUndefined, replicateRow.optional()), { error: 'Write down at least one replicate.' })
    .transform((rows) => rows.filter((row) => row !== undefined))
    .refine((rows) => rows.length > 0, 'Write down at least one replicate.')
    .refine((rows) => rows.length <= REPLICATE_COUNT.max, `Write down at most ${REPLICATE_COUNT.max} replicates.`),
);

/**
 * Input of a germination test, as a form or a program sends it.
 *
 * @param today  'YYYY-MM-DD' at the bank; neither date may lie after it
 * @returns a schema. Messages about a replicate stand at 'replicates.<row>' or at one of its boxes, counted over the
 *          rows as sent. That the test was set on or after the lot's harvest is for the command, which knows the lot
 * @throws RangeError when today is not a calendar date
 * Checked in tests/schemas/germination-test.test.ts
 */
export function germinationTestInput(today: string) {
  return z
    .object({
      lot: lotNumber,
      packetId: optionalField(recordId),
      /** whether the seeds set are to be taken out of that packet's ledger */
      takeSeed: z.preprocess((value) => value === 'on' || value === true, z.boolean()),
      /** the ledger's line by which the seed was taken out before; nothing is taken out then, whatever else is said */
      withdrawalId: optionalField(recordId),
      setOn: pastOrTodayDate(today),
      finishedOn: pastOrTodayDate(today),
      method: optionalField(shortText),
      notes: optionalField(longText),
      correctsId: optionalField(recordId),
      correctionReason: optionalField(shortText),
      replicates,
    })
    .superRefine((test, context) => {
      const refuse = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
      const days = daysBetween(test.setOn, test.finishedOn);
      if (days < 0) refuse('finishedOn', `The test was set on ${test.setOn}: it cannot have finished before that.`);
      if (days > LONGEST_TEST_DAYS) refuse('finishedOn', `That is ${days} days after it was set: check the year.`);
      if (test.takeSeed && !test.packetId && !test.correctsId && !test.withdrawalId) {
        refuse('packetId', 'Choose the packet from which the seeds were taken.');
      }
      if (test.correctsId && !test.correctionReason) refuse('correctionReason', CORRECTION_REASON_NEEDED);
    });
}

export type GerminationTestInput = z.output<ReturnType<typeof germinationTestInput>>;
export type ReplicateInput = GerminationTestInput['replicates'][number];
