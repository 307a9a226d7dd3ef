/** Input of the commands about calendars that a calendar program reads without signing in. */
import { z } from 'zod';
import { idOf } from './choice-field';
import { textUpTo } from './field-schemas';

export const createCalendarFeedSchema = z.object({ name: textUpTo(60) });

export const revokeCalendarFeedSchema = z.object({ id: idOf('calendar') });
