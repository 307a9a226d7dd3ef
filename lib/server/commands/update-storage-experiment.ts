import { updateStorageExperimentSchema } from '@/lib/schemas/storage-experiment/experiment-input';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { refuseStale } from './stale-version';
import {
  experimentRecord,
  readExperimentState,
  requireExperimentName,
  writeExperimentRows,
} from './storage-experiment-rows';

const LABELS = { name: 'name', species: 'species', crop: 'crop', notes: 'notes', counts: 'number of counts' };

/** Puts a storage experiment in place of its earlier state, counts and all; the log of changes keeps the earlier one. */
export const updateStorageExperiment = defineCommand({
  name: 'update-storage-experiment',
  role: 'steward',
  schema: updateStorageExperimentSchema,
  async run({ tx, audit }, { id, version, table: rows, ...input }): Promise<{ id: string }> {
    const before = await readExperimentState(tx, id);
    if (!before) throw notFound('This storage experiment');
    const record = { entity: 'storage experiment', entityId: id };
    const { rows: _, ...state } = before;
    await refuseStale(tx, { ...record, called: `Experiment ${before.name}` }, version, state.version, LABELS);
    await requireExperimentName(tx, input.name, id);
    const { data, crop } = await experimentRecord(tx, input);
    const after = { ...data, crop, version: version + 1, counts: rows.length, rows };
    const otherCounts = JSON.stringify(before.rows) !== JSON.stringify(rows);
    const changes = [
      describeChanges(state, { ...data, crop, counts: rows.length }, LABELS),
      ...(otherCounts && before.counts === rows.length ? ['counts corrected'] : []),
    ].filter(Boolean);
    await tx.storageExperiment.update({ where: { id }, data: { ...data, version: version + 1 } });
    if (otherCounts) await writeExperimentRows(tx, id, rows);
    await audit({
      ...record,
      summary: `Changed storage experiment ${data.name}: ${changes.join(', ') || 'nothing'}`,
      before,
      after,
    });
    return { id };
  },
});
