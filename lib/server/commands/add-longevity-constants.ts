import { longevityConstantsSchema } from '@/lib/schemas/longevity-constants';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';

/** Adds longevity constants of the bank's own. Which crop uses them is chosen with the crop. */
export const addLongevityConstants = defineCommand({
  name: 'add-longevity-constants',
  role: 'steward',
  schema: longevityConstantsSchema,
  async run({ tx, audit }, input) {
    const taken = await tx.longevityConstants.findUnique({ where: { name: input.name }, select: { id: true } });
    if (taken) throw fieldError({ name: 'Other constants have this name: add where these come from, or the year.' });
    const id = newId();
    const data = { ...input, mark: "bank's own" };
    await tx.longevityConstants.create({ data: { id, ...data } });
    await audit({
      entity: 'longevity constants',
      entityId: id,
      summary: `Added longevity constants ${input.name} (${input.species})`,
      after: data,
    });
    return { id };
  },
});
