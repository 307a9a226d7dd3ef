import { createStoreSchema } from '@/lib/schemas/store';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { requirePlace } from './require-place';

/** Adds a place where packets lie. */
export const createStore = defineCommand({
  name: 'create-store',
  role: 'steward',
  schema: createStoreSchema,
  async run({ tx, audit }, input): Promise<{ id: string }> {
    const parent = await requirePlace(tx, input, null);
    const { targetHumidityPercent, ...fields } = input;
    const id = newId();
    const data = { ...fields, targetRelativeHumidity: targetHumidityPercent };
    await tx.store.create({ data: { id, ...data } });
    await audit({
      entity: 'store',
      entityId: id,
      summary: `Added ${input.kind} ${input.name}${parent ? ` in ${parent}` : ''}`,
      after: { ...data, parent, version: 1 },
    });
    return { id };
  },
});
