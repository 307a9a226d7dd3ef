import type { Prisma } from '@/generated/prisma/client';
import { updateStoreSchema } from '@/lib/schemas/store';
import { notFound } from '../app-error';
import { lotsEverIn } from '../stores/lots-in-store';
import { packetsInside } from '../stores/packets-in-store';
import { repeatInheritedTargets } from '../stores/repeat-inherited-targets';
import { writePhase } from '../stores/write-phase';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { fieldError } from './field-error';
import { refuseTakenName } from './require-place';
import { refuseStale } from './stale-version';

const LABELS = {
  name: 'name',
  kind: 'kind',
  inheritsTarget: 'as the store around it',
  targetTemperatureC: 'target temperature',
  targetRelativeHumidity: 'target humidity',
  capacityPackets: 'capacity',
  closedOn: 'no longer used since',
  notes: 'notes',
};

/**
 * Changes a store, or corrects what was written of it. Its targets decide how seed in it ages where nothing was logged,
 * so a changed target says since when. Where it stands is move-store's.
 */
export const updateStore = defineCommand({
  name: 'update-store',
  role: 'steward',
  schema: updateStoreSchema,
  async run({ tx, person, audit, rejudge }, input): Promise<{ id: string }> {
    const { id, version } = input;
    const stored = await tx.store.findUnique({
      where: { id },
      select: {
        name: true,
        kind: true,
        inheritsTarget: true,
        targetTemperatureC: true,
        targetRelativeHumidity: true,
        capacityPackets: true,
        closedOn: true,
        notes: true,
        version: true,
        parent: { select: { targetTemperatureC: true, targetRelativeHumidity: true } },
      },
    });
    if (!stored) throw notFound('This store');
    const { parent, ...before } = stored;
    const record = { entity: 'store', entityId: id };
    await refuseStale(tx, { ...record, called: `Store ${before.name}` }, version, before.version, LABELS);
    await refuseTakenName(tx, input.name, id);
    if (input.inheritsTarget && !parent) {
      throw fieldError({ inheritsTarget: 'It stands by itself: untick this and fill in a temperature.' });
    }
    if (input.closedOn && !before.closedOn) await refuseUnlessEmpty(tx, id);
    const target = input.inheritsTarget
      ? (parent as NonNullable<typeof parent>)
      : {
          targetTemperatureC: input.targetTemperatureC as number,
          targetRelativeHumidity: input.targetHumidityPercent ?? null,
        };
    const after = {
      name: input.name,
      kind: input.kind,
      inheritsTarget: input.inheritsTarget,
      ...target,
      capacityPackets: input.capacityPackets ?? null,
      closedOn: input.closedOn ?? null,
      notes: input.notes ?? null,
      version: version + 1,
    };
    const changes = describeChanges(before, after, LABELS);
    if (!changes) after.version = version;
    await tx.store.update({ where: { id }, data: after });
    let since = '';
    if (TARGET_FIELDS.some((field) => before[field] !== after[field])) {
      await writePhase(tx, {
        storeId: id,
        byId: person.id,
        from: input.setSince ?? null,
        change: {
          target: input.inheritsTarget
            ? null
            : { temperatureC: target.targetTemperatureC, relativeHumidity: target.targetRelativeHumidity },
        },
        fields: { from: 'setSince', parent: 'inheritsTarget' },
      });
      await repeatInheritedTargets(tx);
      rejudge(await lotsEverIn(tx, id));
      since = input.setSince ? `, since ${input.setSince}` : '';
    } else if (before.name !== after.name) {
      rejudge(await lotsEverIn(tx, id)); // lists show where a lot lies by name
    }
    await audit({ ...record, summary: `Changed store ${after.name}: ${changes || 'nothing'}${since}`, before, after });
    return { id };
  },
});

const TARGET_FIELDS = ['inheritsTarget', 'targetTemperatureC', 'targetRelativeHumidity'] as const;

async function refuseUnlessEmpty(tx: Prisma.TransactionClient, id: string): Promise<void> {
  const { packets } = await packetsInside(tx, id);
  if (packets > 0) {
    throw fieldError({
      closedOn: `${packets} ${packets === 1 ? 'packet lies' : 'packets lie'} in it: move them elsewhere first.`,
    });
  }
}
