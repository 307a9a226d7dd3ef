/** Input of the command that takes over what a bank's own tests say of a crop. */
import { z } from 'zod';
import { idOf, versionField } from './choice-field';

/** As the page showed them: two or four figures, so that nobody takes over what they have not seen. */
const SHOWN = /^-?\d+(\.\d+)?( -?\d+(\.\d+)?){1}(( -?\d+(\.\d+)?){2})?$/;

export const adoptLearntPriorsSchema = z.object({
  id: idOf('crop'),
  version: versionField,
  shown: z
    .string({ error: 'Load the page again.' })
    .max(100, 'Load the page again.')
    .regex(SHOWN, 'Load the page again.'),
});
