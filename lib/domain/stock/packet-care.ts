/**
 * What was done to a packet's container, line by line, and how it is now. The last seal or opening holds, and the last
 * desiccant; whoever packs seed anew writes down both, so that nothing of the old container is left standing.
 */
import type { CalendarDate } from '../calendar/calendar-date';

export const CARE_KINDS = ['sealed', 'opened', 'desiccant'] as const;
export type CareKind = (typeof CARE_KINDS)[number];

export interface CareLine {
  on: CalendarDate;
  what: CareKind;
  /** what was put in; null for a 'desiccant' line: it was taken out */
  desiccant: string | null;
  desiccantGrams: number | null;
  changeDueOn: CalendarDate | null;
}

export interface PacketCareNow {
  /** sealed, and not opened since */
  sealedSince: CalendarDate | null;
  /** opened, and not sealed since */
  openSince: CalendarDate | null;
  desiccant: { key: string; grams: number | null; since: CalendarDate; changeDueOn: CalendarDate | null } | null;
}

/**
 * @param lines    of one packet, in the order of their days and, within a day, of their writing
 * @param hermetic whether the container that the packet is in now can be sealed at all
 * @returns what holds now; all null where nothing was ever written down
 * Checked in tests/domain/stock/packet-care.test.ts
 */
export function packetCareNow(lines: readonly CareLine[], hermetic: boolean): PacketCareNow {
  const seal = hermetic ? lines.findLast(({ what }) => what !== 'desiccant') : undefined;
  const put = lines.findLast(({ what }) => what === 'desiccant');
  return {
    sealedSince: seal?.what === 'sealed' ? seal.on : null,
    openSince: seal?.what === 'opened' ? seal.on : null,
    desiccant: put?.desiccant
      ? { key: put.desiccant, grams: put.desiccantGrams, since: put.on, changeDueOn: put.changeDueOn }
      : null,
  };
}

/** The next thing that a container wants, and from when: to be sealed again, or a change of desiccant. */
export type CareDue = { what: 'seal' | 'desiccant'; on: CalendarDate };

/**
 * @param care  from packetCareNow
 * @returns what is due first, also in days to come; a container that stands open is due at once, since the day on which
 *          it was opened; null where nothing is
 * Checked in tests/domain/stock/packet-care.test.ts
 */
export function nextCareDue({ openSince, desiccant }: PacketCareNow): CareDue | null {
  if (openSince !== null) return { what: 'seal', on: openSince };
  return desiccant?.changeDueOn ? { what: 'desiccant', on: desiccant.changeDueOn } : null;
}
