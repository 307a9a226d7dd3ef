/** Input of the commands that change a packet as a whole: repacked, poured together, for another purpose, cared for. */
import { z } from 'zod';
import { CARE_KINDS } from '../domain/stock/packet-care';
import { PACKET_ROLE_KEYS } from '../domain/stock/packet-roles';
import { choice, idOf, tickBox } from './choice-field';
import { optionalField, pastOrTodayDate, shortText } from './field-schemas';
import { seenPlacement } from './movement';
import { checkChangeDue, checkDesiccant, checkPacking, desiccantFields, packingFields } from './packing';

/** @param today  'YYYY-MM-DD' at the bank */
export const repackPacketSchema = (today: string) =>
  z
    .object({
      packetId: idOf('packet'),
      ...packingFields,
      /** ticked by somebody who has read the warning about its moisture */
      storeAnyway: tickBox,
      /** left empty: today */
      from: optionalField(pastOrTodayDate(today)),
      version: seenPlacement,
    })
    .superRefine((input, context) => {
      checkPacking(input, context);
      checkChangeDue(input.from ?? today, input.changeDueOn, context);
    });

/** @param today  'YYYY-MM-DD' at the bank */
export const mergePacketsSchema = (today: string) =>
  z.object({
    /** the packet that is kept and gives its storage history to all the seed */
    packetId: idOf('packet to keep'),
    /** the packet that is emptied into it */
    otherPacketId: idOf('packet to empty'),
    /** left empty: today */
    on: optionalField(pastOrTodayDate(today)),
    /** ticked by somebody who has read that the other packet's seed aged more */
    keepAnyway: tickBox,
    /** ticked by somebody who has read that the only safety duplicate goes */
    loseDuplicate: tickBox,
    version: seenPlacement,
  });

export const changePacketRoleSchema = z.object({
  packetId: idOf('packet'),
  role: choice(PACKET_ROLE_KEYS, 'purpose'),
  loseDuplicate: tickBox,
});

/** @param today  'YYYY-MM-DD' at the bank */
export const recordPacketCareSchema = (today: string) =>
  z
    .object({
      packetId: idOf('packet'),
      what: choice(CARE_KINDS, 'what was done'),
      /** left empty: today */
      on: optionalField(pastOrTodayDate(today)),
      ...desiccantFields,
      note: optionalField(shortText),
    })
    .superRefine((input, context) => {
      if (input.what === 'desiccant') checkDesiccant(input, context);
      checkChangeDue(input.on ?? today, input.changeDueOn, context);
    });
