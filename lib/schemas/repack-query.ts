import { z } from 'zod';
import { calendarDate, moisturePercent, optionalField } from './field-schemas';

/** The address of the form for repacking: what a moisture test or a drying run found, and on which day. */
export const repackQuery = z.object({
  moisture: optionalField(moisturePercent).catch(undefined),
  from: optionalField(calendarDate).catch(undefined),
});
