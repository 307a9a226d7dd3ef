import { randomBytes } from 'node:crypto';

let lastMillisecond = 0;
let sequence = 0;
const LARGEST_SEQUENCE = 0xfff;

/**
 * A UUID version 7 (RFC 9562): sorts by the moment it was made, so rows keep their order. Within one millisecond the
 * twelve bits after the version count up (method 1 of its section 6.2); when they run out the next millisecond is taken.
 *
 * @param now  milliseconds since 1970; a clock set back does not set the order back
 */
export function newId(now: number = Date.now()): string {
  if (now > lastMillisecond) {
    lastMillisecond = now;
    sequence = 0;
  } else if (sequence < LARGEST_SEQUENCE) sequence += 1;
  else {
    lastMillisecond += 1;
    sequence = 0;
  }
  const bytes = randomBytes(16);
  bytes.writeUIntBE(lastMillisecond, 0, 6);
  bytes.writeUInt16BE(0x7000 | sequence, 6);
  const hex = bytes.toString('hex');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${variant(hex.slice(16, 20))}-${hex.slice(20)}`;
}

/** RFC 9562 wants the two highest bits of this group to be 10. */
function variant(group: string): string {
  return ((Number.parseInt(group, 16) & 0x3fff) | 0x8000).toString(16);
}
