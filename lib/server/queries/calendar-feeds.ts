import 'server-only';
import { mayActAs, type Person } from '../auth/roles';
import { reader } from '../database/connections';

export interface CalendarFeedRow {
  id: string;
  name: string;
  createdAt: Date;
  lastUsedAt: Date | null;
}

/** Calendars that still answer: one's own, and all of them for a steward, newest first. */
export async function findCalendarFeeds(person: Person): Promise<CalendarFeedRow[]> {
  return reader().calendarFeed.findMany({
    where: { revokedAt: null, ...(mayActAs(person, 'steward') ? {} : { byId: person.id }) },
    orderBy: { id: 'desc' },
    select: { id: true, name: true, createdAt: true, lastUsedAt: true },
  });
}
