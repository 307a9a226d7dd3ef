import { randomBytes } from 'node:crypto';
import { isUuidV7, uuidV7 } from '../domain/ids/uuid-v7';

let last: string | null = null;

/**
 * An id for a row: a UUID version 7, so rows keep the order in which they were made.
 *
 * @param now  milliseconds since 1970; a clock set back does not set the order back
 */
export function newId(now: number = Date.now()): string {
  last = uuidV7({ now, after: last, random: randomBytes(8) });
  return last;
}

/** An id that sorts after these too: they may come from phones whose clocks run ahead. */
export function newIdAfter(ids: readonly string[], now: number = Date.now()): string {
  const highest = ids
    .filter(isUuidV7)
    .reduce<string | null>((most, id) => (most === null || id > most ? id : most), null);
  // Not kept as the last one: a single phone from the future must not date every row that is written from now on.
  return highest !== null && (last === null || highest > last)
    ? uuidV7({ now, after: highest, random: randomBytes(8) })
    : newId(now);
}
