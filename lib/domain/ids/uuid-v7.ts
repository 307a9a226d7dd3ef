/*
 * Ids that sort by the moment they were made (RFC 9562, UUID version 7), wherever they are made: rows on the server,
 * counts on phones whose clocks may be wrong.
 */

const LARGEST_SEQUENCE = 0xfff;
const LARGEST_MILLISECOND = 2 ** 48 - 1;
const UUID_V7 = /^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/;

/**
 * Whether a text is such an id, in small letters.
 *
 * @param text  anything
 * Checked in tests/domain/ids/uuid-v7.test.ts
 */
export function isUuidV7(text: unknown): text is string {
  return typeof text === 'string' && UUID_V7.test(text);
}

/**
 * The next id: of this moment, and above the highest one seen so far, whatever the clock says. Within one millisecond the
 * twelve bits after the version count up (method 1 of section 6.2); when they run out the next millisecond is taken.
 *
 * @param moment.now     milliseconds since 1970, integer in [0, 2^48)
 * @param moment.after   highest id seen so far; null: none
 * @param moment.random  eight random bytes
 * @returns the id, in small letters
 * @throws RangeError when `now` is outside the range above, `after` is no such id, or the millennia have run out
 * @see RFC 9562, sections 5.7 and 6.2
 * Checked in tests/domain/ids/uuid-v7.test.ts
 */
export function uuidV7({ now, after, random }: { now: number; after: string | null; random: Uint8Array }): string {
  if (!(Number.isSafeInteger(now) && now >= 0 && now <= LARGEST_MILLISECOND)) {
    throw new RangeError(`uuidV7: now must be milliseconds since 1970, got ${now}`);
  }
  if (after !== null && !isUuidV7(after))
    throw new RangeError(`uuidV7: after must be a UUID of version 7, got ${after}`);
  if (random.length < 8) throw new RangeError(`uuidV7: random must hold eight bytes, got ${random.length}`);
  let millisecond = now;
  let sequence = 0;
  const last = after === null ? -1 : Number.parseInt(after.slice(0, 8) + after.slice(9, 13), 16);
  if (after !== null && last >= now) {
    millisecond = last;
    sequence = Number.parseInt(after.slice(15, 18), 16) + 1;
    if (sequence > LARGEST_SEQUENCE) {
      millisecond += 1;
      sequence = 0;
      if (millisecond > LARGEST_MILLISECOND) throw new RangeError('uuidV7: no id is left above the highest one seen');
    }
  }
  const time = millisecond.toString(16).padStart(12, '0');
  const chance = Array.from(random.subarray(0, 8), (byte, at) =>
    // RFC 9562 wants the two highest bits of this group to be 10.
    (at === 0 ? (byte & 0x3f) | 0x80 : byte).toString(16).padStart(2, '0'),
  ).join('');
  return `${time.slice(0, 8)}-${time.slice(8)}-7${sequence.toString(16).padStart(3, '0')}-${chance.slice(0, 4)}-${chance.slice(4)}`;
}
