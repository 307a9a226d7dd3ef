/** Input of the commands about packets: where they lie, and what goes in or out. */
import { z } from 'zod';
import { CONTAINER_KEYS } from '../domain/stock/containers';
import { HAND_WITHDRAWAL_REASONS } from '../domain/stock/movement-reasons';
import { choice, idOf, tickBox } from './choice-field';
import {
  formNumber,
  moisturePercent,
  optionalField,
  pastOrTodayDate,
  positiveSeedCount,
  positiveWeightG,
  shortText,
} from './field-schemas';

export const AMOUNT_UNITS = ['seeds', 'grams'] as const;

export const placementFields = {
  moisturePercent: optionalField(moisturePercent),
  container: choice(CONTAINER_KEYS, 'container'),
  storeId: idOf('store'),
  /** ticked by somebody who has read that freezing moist seed can kill it */
  storeAnyway: tickBox,
};

/** @param today  'YYYY-MM-DD' at the bank */
export const movePacketSchema = (today: string) =>
  z.object({
    packetId: idOf('packet'),
    ...placementFields,
    /** left empty: today */
    from: optionalField(pastOrTodayDate(today)),
  });

/** @param today  'YYYY-MM-DD' at the bank */
export const takeSeedOutSchema = (today: string) =>
  z
    .object({
      packetId: idOf('packet'),
      amount: z.preprocess((value) => formNumber(value), z.unknown()),
      unit: choice(AMOUNT_UNITS, 'unit'),
      reason: choice(HAND_WITHDRAWAL_REASONS, 'reason'),
      /** left empty: today */
      on: optionalField(pastOrTodayDate(today)),
      note: optionalField(shortText),
    })
    .transform((input, context) => {
      const amount = (input.unit === 'seeds' ? positiveSeedCount : positiveWeightG).safeParse(input.amount);
      if (amount.success) return { ...input, amount: amount.data };
      context.addIssue({
        code: 'custom',
        path: ['amount'],
        message: amount.error.issues[0]?.message ?? 'Fill this in.',
      });
      return z.NEVER;
    });

export const undoMovementSchema = z.object({
  movementId: idOf('movement'),
  note: optionalField(shortText),
});
