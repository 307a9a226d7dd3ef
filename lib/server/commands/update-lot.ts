import { updateLotSchema } from '@/lib/schemas/lot';
import { notFound } from '../app-error';
import { LOT_FACTS } from '../lot-facts';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { fieldError } from './field-error';
import { refuseStale } from './stale-version';

const LABELS = {
  harvestedOn: 'harvest date',
  generation: 'regrowings',
  isolation: 'isolation',
  plantsHarvested: 'plants harvested',
  cleanWeightG: 'clean weight',
  thousandSeedWeightG: 'thousand-seed weight',
  treatment: 'treatment',
  notes: 'notes',
};

/** Corrects what is known of a lot. Its number and accession stay; its seeds are in the packets' ledgers. */
export const updateLot = defineCommand({
  name: 'update-lot',
  role: 'volunteer',
  schema: updateLotSchema,
  async run({ tx, audit, rejudge }, input): Promise<{ number: string }> {
    const { id, version } = input;
    const stored = await tx.lot.findUnique({
      where: { id },
      select: {
        number: true,
        ...LOT_FACTS,
        version: true,
      },
    });
    if (!stored) throw notFound('This lot');
    const { number, ...before } = stored;
    const record = { entity: 'lot', entityId: id };
    await refuseStale(tx, { ...record, called: `Lot ${number}` }, version, before.version, LABELS);
    const firstStored = await tx.placement.findFirst({
      where: { packet: { lotId: id } },
      orderBy: { from: 'asc' },
      select: { from: true },
    });
    if (firstStored && input.harvestedOn > firstStored.from) {
      throw fieldError({
        harvestedOn: `This lot was in store from ${firstStored.from}, so it cannot have been harvested later.`,
      });
    }
    const after = {
      harvestedOn: input.harvestedOn,
      generation: input.generation ?? 0,
      isolation: input.isolation,
      plantsHarvested: input.plantsHarvested ?? null,
      cleanWeightG: input.cleanWeightG ?? null,
      thousandSeedWeightG: input.thousandSeedWeightG ?? null,
      treatment: input.treatment ?? null,
      notes: input.notes ?? null,
      version: version + 1,
    };
    const changes = describeChanges(before, after, LABELS);
    if (!changes) after.version = version;
    await tx.lot.update({ where: { id }, data: after });
    rejudge([id]);
    await audit({ ...record, summary: `Changed lot ${number}: ${changes || 'nothing'}`, before, after });
    return { number };
  },
});
