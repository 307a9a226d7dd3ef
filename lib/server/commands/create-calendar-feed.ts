import 'server-only';
import { createCalendarFeedSchema } from '@/lib/schemas/calendar-feed';
import { hashIssuedSecret, newIssuedSecret } from '../auth/issued-secret';
import { newId } from '../new-id';
import { defineCommand } from './command';

/**
 * Makes an address at which a calendar program reads when trays are counted. Its secret is shown once; only the hash is
 * kept.
 */
export const createCalendarFeed = defineCommand({
  name: 'create-calendar-feed',
  role: 'volunteer',
  schema: createCalendarFeedSchema,
  async run({ tx, person, audit }, { name }): Promise<{ id: string; secret: string }> {
    const secret = newIssuedSecret();
    const id = newId();
    await tx.calendarFeed.create({ data: { id, name, hash: hashIssuedSecret(secret), byId: person.id } });
    await audit({
      entity: 'calendar',
      entityId: id,
      summary: `Made calendar ${name}, which reads when trays are counted without signing in`,
      after: { name },
    });
    return { id, secret };
  },
});
