import type { Prisma } from '@/generated/prisma/client';
import { freezingWarning } from '@/lib/domain/longevity/equation-limits';
import { moveStoreSchema } from '@/lib/schemas/store';
import { notFound } from '../app-error';
import { lotsEverIn } from '../stores/lots-in-store';
import { type PacketsInside, packetsInside } from '../stores/packets-in-store';
import { repeatInheritedTargets } from '../stores/repeat-inherited-targets';
import { writePhase } from '../stores/write-phase';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { type Place, requireStoreAround } from './require-place';
import { refuseStale } from './stale-version';

const LABELS = { parent: 'store around it' };

/** From a day on a store stands in another one, with all that is in it. Where it stood before stays known. */
export const moveStore = defineCommand({
  name: 'move-store',
  role: 'volunteer',
  schema: moveStoreSchema,
  async run({ tx, person, today, audit, rejudge }, input): Promise<{ id: string }> {
    const { id, version } = input;
    const store = await tx.store.findUnique({
      where: { id },
      select: {
        name: true,
        kind: true,
        parentId: true,
        inheritsTarget: true,
        targetTemperatureC: true,
        version: true,
        parent: { select: { name: true } },
      },
    });
    if (!store) throw notFound('This store');
    const record = { entity: 'store', entityId: id };
    await refuseStale(tx, { ...record, called: `Store ${store.name}` }, version, store.version, LABELS);
    const parentId = input.parentId ?? null;
    if (parentId === store.parentId) throw fieldError({ parentId: 'It stands there already.' });
    const around = parentId === null ? null : await requireStoreAround(tx, parentId);
    const inside = await packetsInside(tx, id);
    if (!input.moveAnyway) {
      refuseToFreezeMoistSeed(store, around, inside);
      await refuseToOverfill(tx, around, inside);
    }
    const from = await writePhase(tx, {
      storeId: id,
      byId: person.id,
      from: input.correction ? null : (input.from ?? today),
      change: { parentId },
      fields: { from: 'from', parent: 'parentId' },
    });
    await tx.store.update({ where: { id }, data: { parentId, version: version + 1 } });
    await repeatInheritedTargets(tx);
    rejudge(await lotsEverIn(tx, id));
    const names = { before: store.parent?.name ?? null, after: around?.name ?? null };
    const where = `${names.before ? ` from ${names.before}` : ''} to ${names.after ?? 'a place of its own'}`;
    await audit({
      ...record,
      summary: input.correction
        ? `Corrected where ${store.kind} ${store.name} stands:${where}`
        : `Moved ${store.kind} ${store.name}${where} on ${from}, with ${inside.packets} ${inside.packets === 1 ? 'packet' : 'packets'} in it`,
      before: { parent: names.before, version },
      after: { parent: names.after, version: version + 1 },
    });
    return { id };
  },
});

function refuseToFreezeMoistSeed(
  store: { inheritsTarget: boolean; targetTemperatureC: number },
  around: Place | null,
  { moistestPercent }: PacketsInside,
): void {
  if (moistestPercent === null || !around) return;
  const temperatureC = Math.min(around.targetTemperatureC, store.inheritsTarget ? Infinity : store.targetTemperatureC);
  const warning = freezingWarning({ moisturePercent: moistestPercent, temperatureC });
  if (!warning) return;
  throw fieldError({
    parentId: `${around.name} is a freezer, and not all seed in this one is dry. ${warning}`,
    moveAnyway: 'Tick this only if you know that this seed bears it.',
  });
}

async function refuseToOverfill(
  tx: Prisma.TransactionClient,
  around: Place | null,
  { packets }: PacketsInside,
): Promise<void> {
  if (!around) return;
  const { capacityPackets } = await tx.store.findUniqueOrThrow({
    where: { id: around.id },
    select: { capacityPackets: true },
  });
  if (capacityPackets === null) return;
  const there = (await packetsInside(tx, around.id)).packets;
  if (there + packets <= capacityPackets) return;
  throw fieldError({
    parentId: `${around.name} has room for ${capacityPackets} packets and holds ${there}; ${packets} more are in this one.`,
    moveAnyway: 'Tick this if it fits all the same.',
  });
}
