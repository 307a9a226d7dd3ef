import { deleteStorageExperimentSchema } from '@/lib/schemas/storage-experiment/experiment-input';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { refuseStale } from './stale-version';
import { readExperimentState } from './storage-experiment-rows';

/**
 * Removes a storage experiment. Every count of it stays in the log of changes, and constants that were saved from it
 * stay in use.
 */
export const deleteStorageExperiment = defineCommand({
  name: 'delete-storage-experiment',
  role: 'steward',
  schema: deleteStorageExperimentSchema,
  async run({ tx, audit }, { id, version }): Promise<{ name: string }> {
    const before = await readExperimentState(tx, id);
    if (!before) throw notFound('This storage experiment');
    const record = { entity: 'storage experiment', entityId: id };
    const labels = { name: 'name', counts: 'number of counts' };
    await refuseStale(tx, { ...record, called: `Experiment ${before.name}` }, version, before.version, labels);
    await tx.storageExperiment.delete({ where: { id } });
    await audit({
      ...record,
      summary: `Removed storage experiment ${before.name} with its ${before.counts} counts`,
      before,
    });
    return { name: before.name };
  },
});
