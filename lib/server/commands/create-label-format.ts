import { createLabelFormatSchema } from '@/lib/schemas/label-format';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { requireFreeFormatName } from './free-format-name';

/** Adds a label sheet or roll of the bank's own. */
export const createLabelFormat = defineCommand({
  name: 'create-label-format',
  role: 'steward',
  schema: createLabelFormatSchema,
  async run({ tx, audit, person }, input): Promise<{ id: string }> {
    await requireFreeFormatName(tx, input.name, null);
    const id = newId();
    await tx.labelFormat.create({ data: { id, ...input, byId: person.id } });
    await audit({
      entity: 'label format',
      entityId: id,
      summary: `Added label format ${input.name}`,
      after: { ...input, version: 1 },
    });
    return { id };
  },
});
