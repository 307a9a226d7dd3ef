import { z } from 'zod';
import { PACKET_ROLE_KEYS } from '../domain/stock/packet-roles';
import { choice, idOf } from './choice-field';
import { optionalField, pastOrTodayDate, positiveSeedCount } from './field-schemas';
import { placementFields } from './movement';

/**
 * Part of a packet goes into a packet of its own.
 *
 * @param today  'YYYY-MM-DD' at the bank
 */
export const splitPacketSchema = (today: string) =>
  z.object({
    packetId: idOf('packet'),
    seeds: positiveSeedCount,
    role: choice(PACKET_ROLE_KEYS, 'purpose'),
    ...placementFields,
    /** left empty: today */
    from: optionalField(pastOrTodayDate(today)),
  });
