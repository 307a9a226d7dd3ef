import 'server-only';
import { revokeCalendarFeedSchema } from '@/lib/schemas/calendar-feed';
import { AppError, notFound } from '../app-error';
import { mayActAs } from '../auth/roles';
import { defineCommand } from './command';

/** A calendar that is revoked reads nothing more. Whoever made it may do so, and every steward. */
export const revokeCalendarFeed = defineCommand({
  name: 'revoke-calendar-feed',
  role: 'volunteer',
  schema: revokeCalendarFeedSchema,
  async run({ tx, person, audit }, { id }): Promise<{ id: string }> {
    const feed = await tx.calendarFeed.findUnique({
      where: { id },
      select: { name: true, byId: true, revokedAt: true },
    });
    if (!feed) throw notFound('This calendar');
    if (feed.byId !== person.id && !mayActAs(person, 'steward')) {
      throw new AppError('not-allowed', 'Somebody else made this calendar. Ask them, or a steward, to revoke it.');
    }
    if (feed.revokedAt) throw new AppError('refused', 'This calendar has been revoked already.');
    await tx.calendarFeed.update({ where: { id }, data: { revokedAt: new Date() } });
    await audit({
      entity: 'calendar',
      entityId: id,
      summary: `Revoked calendar ${feed.name}: its address answers no more`,
      before: { revokedAt: null },
    });
    return { id };
  },
});
