import { longevityConstantsSchema } from '@/lib/schemas/longevity-constants';
import { defineCommand } from './command';
import { addOwnConstants } from './own-constants';

/** Adds longevity constants of the bank's own. Which crop uses them is chosen with the crop. */
export const addLongevityConstants = defineCommand({
  name: 'add-longevity-constants',
  role: 'steward',
  schema: longevityConstantsSchema,
  run: (context, input) => addOwnConstants(context, input),
});
