import { deleteLabelFormatSchema } from '@/lib/schemas/label-format';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { refuseStale } from './stale-version';

/** Removes a label format of the bank's own; labels that were printed with it stay good. */
export const deleteLabelFormat = defineCommand({
  name: 'delete-label-format',
  role: 'steward',
  schema: deleteLabelFormatSchema,
  async run({ tx, audit }, { id, version }): Promise<{ name: string }> {
    const stored = await tx.labelFormat.findUnique({ where: { id } });
    if (!stored) throw notFound('This label format');
    const { createdAt: _createdAt, byId: _byId, ...before } = stored;
    const record = { entity: 'label format', entityId: id };
    await refuseStale(tx, { ...record, called: `Label format ${before.name}` }, version, before.version, {
      name: 'name',
    });
    await tx.labelFormat.delete({ where: { id } });
    await audit({ ...record, summary: `Removed label format ${before.name}`, before });
    return { name: before.name };
  },
});
