/** Input of the commands about drying runs. Weights are grams with the tray, as the balance shows them. */
import { z } from 'zod';
import { idOf, tickBox } from './choice-field';
import {
  blankToUndefined,
  longText,
  lotNumber,
  moisturePercent,
  numberBetween,
  optionalField,
  pastOrTodayDate,
  positiveWeightG,
  shortText,
} from './field-schemas';

/** grams of an empty tray, jar or bag; a tared balance shows 0 */
const TARE_G = { min: 0, max: 50_000 } as const;

/** 'YYYY-MM-DDTHH:mm' by the seed room's clock; whether it lies ahead is for the command, which has the clock. */
const localMoment = z.preprocess(
  blankToUndefined,
  z
    .string({ error: 'Write a day and a time of day.' })
    .regex(/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/, 'Write a day and a time of day, such as 2026-11-25 08:30.'),
);

/** A weighing: its weight, when (left empty: now), and a tick after a warning that the weight is odd. */
const weighingFields = {
  weightG: positiveWeightG,
  at: optionalField(localMoment),
  /** ticked by somebody who has read that this weight does not fit the others */
  weightAnyway: tickBox,
};

export const startDryingRunSchema = z
  .object({
    lot: lotNumber,
    packetId: optionalField(idOf('packet')),
    storeId: optionalField(idOf('store')),
    dryingWith: optionalField(shortText),
    /** the test that found the moisture at the start; or the next field */
    moistureTestId: optionalField(idOf('moisture test')),
    startMoisturePercent: optionalField(moisturePercent),
    targetMoisturePercent: moisturePercent,
    tareG: optionalField(numberBetween(TARE_G, 'g')).transform((grams) => grams ?? 0),
    weightG: weighingFields.weightG,
    at: weighingFields.at,
    notes: optionalField(longText),
  })
  .superRefine(({ moistureTestId, startMoisturePercent, tareG, weightG }, context) => {
    const refuse = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
    if (moistureTestId === undefined && startMoisturePercent === undefined) {
      refuse('startMoisturePercent', 'Write the moisture now, or choose the test that found it.');
    }
    if (moistureTestId !== undefined && startMoisturePercent !== undefined) {
      refuse('startMoisturePercent', 'Leave this empty, or choose no test: which of the two holds?');
    }
    if (weightG <= tareG) refuse('weightG', 'With seed on it the tray weighs more than empty: check both.');
  });

export const recordDryingWeighingSchema = z.object({ runId: idOf('drying run'), ...weighingFields });

export const correctDryingWeighingSchema = z.object({ weighingId: idOf('weighing'), ...weighingFields });

/** @param today  'YYYY-MM-DD' at the bank */
export const endDryingRunSchema = (today: string) =>
  z.object({
    runId: idOf('drying run'),
    /** left empty: today */
    on: optionalField(pastOrTodayDate(today)),
  });

/** What a drying run dries with, offered while typing; anything else may be written. */
export const DRYING_WITH = ['silica gel', 'zeolite beads', 'dry room', 'dehumidified cabinet', 'room air'] as const;

/** The address of the form: for which lot, and of which packet. */
export const newDryingRunQuery = z.object({
  lot: z.string().max(60).default('').catch(''),
  packet: z.string().max(60).optional().catch(undefined),
});

/** The address of the list: which page of the runs that have ended. */
export const dryingListQuery = z.object({
  page: z.coerce.number().int().min(1).max(100_000).default(1).catch(1),
});
