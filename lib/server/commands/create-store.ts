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
    const around = await requirePlace(tx, input, null);
    const { targetHumidityPercent, targetTemperatureC, inheritsTarget, ...fields } = input;
    const target =
      inheritsTarget && around
        ? { targetTemperatureC: around.targetTemperatureC, targetRelativeHumidity: around.targetRelativeHumidity }
        : { targetTemperatureC: targetTemperatureC as number, targetRelativeHumidity: targetHumidityPercent };
    const id = newId();
    const data = { ...fields, inheritsTarget, ...target };
    await tx.store.create({ data: { id, ...data } });
    await audit({
      entity: 'store',
      entityId: id,
      summary: `Added ${input.kind} ${input.name}${around ? ` in ${around.name}` : ''}`,
      after: { ...data, parent: around?.name ?? null, version: 1 },
    });
    return { id };
  },
});
