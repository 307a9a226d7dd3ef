import { updateLabelFormatSchema } from '@/lib/schemas/label-format';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { requireFreeFormatName } from './free-format-name';
import { refuseStale } from './stale-version';

const LABELS = {
  name: 'name',
  kind: 'kind of paper',
  pageWidthMm: 'page width',
  pageHeightMm: 'page height',
  labelWidthMm: 'label width',
  labelHeightMm: 'label height',
  columns: 'columns',
  rows: 'rows',
  marginLeftMm: 'left margin',
  marginTopMm: 'upper margin',
  pitchXMm: 'step to the right',
  pitchYMm: 'step down',
  code: 'code',
};

/** Corrects a label format of the bank's own. */
export const updateLabelFormat = defineCommand({
  name: 'update-label-format',
  role: 'steward',
  schema: updateLabelFormatSchema,
  async run({ tx, audit }, { id, version, ...input }): Promise<{ id: string }> {
    const stored = await tx.labelFormat.findUnique({ where: { id } });
    if (!stored) throw notFound('This label format');
    const { createdAt: _createdAt, byId: _byId, ...before } = stored;
    const record = { entity: 'label format', entityId: id };
    await refuseStale(tx, { ...record, called: `Label format ${before.name}` }, version, before.version, LABELS);
    await requireFreeFormatName(tx, input.name, id);
    const after = { ...input, version: version + 1 };
    await tx.labelFormat.update({ where: { id }, data: after });
    const changes = describeChanges(before, after, LABELS);
    await audit({ ...record, summary: `Changed label format ${input.name}: ${changes || 'nothing'}`, before, after });
    return { id };
  },
});
