import { z } from 'zod';
import { PACKET_ROLE_KEYS } from '../domain/stock/packet-roles';
import { choice, idOf } from './choice-field';
import { optionalField, pastOrTodayDate } from './field-schemas';
import { placeFields, seenPlacement } from './movement';
import { checkChangeDue, checkPacking, packingFields } from './packing';
import { amountFields, checkAmount } from './seed-amount';

/**
 * Part of a packet goes into a packet of its own.
 *
 * @param today  'YYYY-MM-DD' at the bank
 */
export const splitPacketSchema = (today: string) =>
  z
    .object({
      packetId: idOf('packet'),
      ...amountFields,
      role: choice(PACKET_ROLE_KEYS, 'purpose'),
      ...placeFields,
      ...packingFields,
      /** left empty: today */
      from: optionalField(pastOrTodayDate(today)),
      version: seenPlacement,
    })
    .transform((input, context) => {
      checkPacking(input, context);
      checkChangeDue(input.from ?? today, input.changeDueOn, context);
      return checkAmount(input, context);
    });
