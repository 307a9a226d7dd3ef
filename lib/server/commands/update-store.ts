import type { Prisma } from '@/generated/prisma/client';
import { updateStoreSchema } from '@/lib/schemas/store';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { requirePlace } from './require-place';
import { refuseStale } from './stale-version';

const LABELS = {
  name: 'name',
  kind: 'kind',
  parent: 'store around it',
  targetTemperatureC: 'target temperature',
  targetRelativeHumidity: 'target humidity',
  notes: 'notes',
};

/** Corrects a store. Its targets and the store around it decide how seed in it ages where nothing was logged. */
export const updateStore = defineCommand({
  name: 'update-store',
  role: 'steward',
  schema: updateStoreSchema,
  async run({ tx, audit, rejudge }, input): Promise<{ id: string }> {
    const { id, version } = input;
    const stored = await tx.store.findUnique({
      where: { id },
      select: {
        name: true,
        kind: true,
        parentId: true,
        targetTemperatureC: true,
        targetRelativeHumidity: true,
        notes: true,
        version: true,
        parent: { select: { name: true } },
      },
    });
    if (!stored) throw notFound('This store');
    const { parent, ...was } = stored;
    const record = { entity: 'store', entityId: id };
    await refuseStale(tx, { ...record, called: `Store ${was.name}` }, version, was.version, LABELS);
    const data = {
      name: input.name,
      kind: input.kind,
      parentId: input.parentId ?? null,
      targetTemperatureC: input.targetTemperatureC,
      targetRelativeHumidity: input.targetHumidityPercent ?? null,
      notes: input.notes ?? null,
      version: version + 1,
    };
    const before = { ...was, parent: parent?.name ?? null };
    const after = { ...data, parent: await requirePlace(tx, input, id) };
    const changes = describeChanges(before, after, LABELS);
    if (!changes) data.version = version;
    await tx.store.update({ where: { id }, data });
    rejudge(await lotsIn(tx, id));
    await audit({
      ...record,
      summary: `Changed store ${data.name}: ${changes || 'nothing'}`,
      before,
      after: { ...after, version: data.version },
    });
    return { id };
  },
});

/** Lots that lie or have lain in this store or in one inside it: what is inside may take its climate. */
async function lotsIn(tx: Prisma.TransactionClient, storeId: string): Promise<string[]> {
  const rows = await tx.$queryRaw<{ lotId: string }[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    )
    SELECT DISTINCT p."lotId" FROM "Placement" pl JOIN "Packet" p ON p."id" = pl."packetId"
    WHERE pl."storeId" IN (SELECT id FROM inside)`;
  return rows.map((row) => row.lotId);
}
