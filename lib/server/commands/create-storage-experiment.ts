import { createStorageExperimentSchema } from '@/lib/schemas/storage-experiment/experiment-input';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { experimentRecord, requireExperimentName, writeExperimentRows } from './storage-experiment-rows';

/** Takes in a storage experiment: all of its counts or nothing. */
export const createStorageExperiment = defineCommand({
  name: 'create-storage-experiment',
  role: 'steward',
  schema: createStorageExperimentSchema,
  async run({ tx, person, audit }, { table: rows, ...input }): Promise<{ id: string }> {
    await requireExperimentName(tx, input.name);
    const { data, crop } = await experimentRecord(tx, input);
    const id = newId();
    await tx.storageExperiment.create({ data: { id, ...data, byId: person.id } });
    await writeExperimentRows(tx, id, rows);
    await audit({
      entity: 'storage experiment',
      entityId: id,
      summary: `Added storage experiment ${data.name} (${data.species}) with ${rows.length} counts`,
      after: { ...data, crop, version: 1, counts: rows.length, rows },
    });
    return { id };
  },
});
