/** Input of the commands about packets: where they lie, and what goes in or out. */
import { z } from 'zod';
import { CONTAINER_KEYS } from '../domain/stock/containers';
import { HAND_WITHDRAWAL_REASONS } from '../domain/stock/movement-reasons';
import { choice, idOf, tickBox } from './choice-field';
import { moisturePercent, optionalField, pastOrTodayDate, shortText } from './field-schemas';
import { amountFields, checkAmount } from './seed-amount';

/** Where a packet is put, and what its bearer ticks after reading a warning. */
export const placeFields = {
  storeId: idOf('store'),
  /** ticked by somebody who has read that freezing moist seed can kill it, or that this moisture is too much to seal */
  storeAnyway: tickBox,
  /** ticked by somebody who has read that the store is full */
  overfill: tickBox,
};

export const placementFields = {
  moisturePercent: optionalField(moisturePercent),
  container: choice(CONTAINER_KEYS, 'container'),
  ...placeFields,
};

/**
 * Where the packet lay when the form was opened: the id of its last placement. If it was moved since, the form is
 * answered with where to. Left out by programmes that have just looked.
 */
export const seenPlacement = optionalField(idOf('packet'));

/** @param today  'YYYY-MM-DD' at the bank */
export const movePacketSchema = (today: string) =>
  z.object({
    packetId: idOf('packet'),
    ...placeFields,
    /** left out: the container it is in, at the moisture it has; named: the moisture is what is written, or not known */
    container: optionalField(choice(CONTAINER_KEYS, 'container')),
    moisturePercent: optionalField(moisturePercent),
    /** left empty: today */
    from: optionalField(pastOrTodayDate(today)),
    version: seenPlacement,
  });

/** @param today  'YYYY-MM-DD' at the bank */
export const takeSeedOutSchema = (today: string) =>
  z
    .object({
      packetId: idOf('packet'),
      ...amountFields,
      reason: choice(HAND_WITHDRAWAL_REASONS, 'reason'),
      /** left empty: today */
      on: optionalField(pastOrTodayDate(today)),
      note: optionalField(shortText),
    })
    .transform(checkAmount);

export const undoMovementSchema = z.object({
  movementId: idOf('movement'),
  note: optionalField(shortText),
});
