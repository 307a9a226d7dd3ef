import { getCropFacts } from '@/lib/domain/reference/all-crops';
import { updateCropSchema } from '@/lib/schemas/crop';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { fieldError } from './field-error';
import { listAccessionWithoutSeed } from './list-accession-without-seed';
import { requireConstants } from './require-constants';
import { refuseStale } from './stale-version';

/** A crop's fields in the users' words. */
export const CROP_LABELS = {
  name: 'name',
  scientificName: 'scientific name',
  family: 'family',
  pollination: 'pollination',
  lifeCycle: 'life cycle',
  storageBehaviour: 'storage behaviour',
  plantsNeeded: 'plants needed',
  thresholdKind: 'kind of threshold',
  thresholdValue: 'threshold',
  sowingMonth: 'sowing month',
  emergence: 'emergence',
  constants: 'longevity constants',
  constantsBorrowed: 'constants borrowed',
  borrowedBecause: 'reason for borrowing',
  priorInitialMean: 'prior initial viability',
  priorInitialSd: 'spread of prior initial viability',
  priorLogRateMean: 'prior rate of ageing',
  priorLogRateSd: 'spread of prior rate of ageing',
  notes: 'notes',
};

const OWN_FIGURES = {
  plantsNeeded: true,
  thresholdKind: true,
  thresholdValue: true,
  sowingMonth: true,
  emergence: true,
  longevityConstantsId: true,
  constantsBorrowed: true,
  borrowedBecause: true,
  priorInitialMean: true,
  priorInitialSd: true,
  priorLogRateMean: true,
  priorLogRateSd: true,
  notes: true,
  version: true,
} as const;

const WHAT_IT_IS = {
  name: true,
  scientificName: true,
  family: true,
  pollination: true,
  lifeCycle: true,
  storageBehaviour: true,
} as const;

/** Sets the bank's own figures for a crop; for a crop the bank added itself, also what it is. */
export const updateCrop = defineCommand({
  name: 'update-crop',
  role: 'steward',
  schema: updateCropSchema,
  async run({ tx, audit, rejudge }, input): Promise<{ id: string }> {
    const { id, version } = input;
    const stored = await tx.crop.findUnique({
      where: { id },
      select: { ...WHAT_IT_IS, ...OWN_FIGURES, longevityConstants: { select: { name: true } } },
    });
    if (!stored) throw notFound('This crop');
    const { longevityConstants, ...was } = stored;
    const record = { entity: 'crop', entityId: id };
    await refuseStale(tx, { ...record, called: `Crop ${was.name}` }, version, was.version, CROP_LABELS);
    const fromReference = getCropFacts(was.name) !== undefined;
    const whatItIs = Object.fromEntries(
      Object.keys(WHAT_IT_IS).map((field) => {
        const key = field as keyof typeof WHAT_IT_IS;
        return [key, fromReference ? was[key] : (input[key] ?? was[key])];
      }),
    ) as Record<keyof typeof WHAT_IT_IS, string>;
    if (whatItIs.name !== was.name) {
      const [same] = await tx.$queryRaw<{ name: string }[]>`
        SELECT "name" FROM "Crop" WHERE "name" = ${whatItIs.name} COLLATE NOCASE AND "id" <> ${id} LIMIT 1`;
      if (same) throw fieldError({ name: `The crop ${same.name} is already there: choose another name.` });
    }
    const { constants, ...chosen } = await requireConstants(tx, input);
    const data = {
      ...whatItIs,
      ...chosen,
      plantsNeeded: input.plantsNeeded ?? null,
      thresholdKind: input.thresholdKind ?? null,
      thresholdValue: input.thresholdPercent ?? null,
      sowingMonth: input.sowingMonth ?? null,
      emergence: input.emergencePercent ?? null,
      priorInitialMean: input.priorInitialMean ?? null,
      priorInitialSd: input.priorInitialSd ?? null,
      priorLogRateMean: input.priorLogRateMean ?? null,
      priorLogRateSd: input.priorLogRateSd ?? null,
      notes: input.notes ?? null,
      version: version + 1,
    };
    const before = { ...was, constants: longevityConstants?.name ?? null };
    const after = { ...data, constants };
    const changes = describeChanges(before, after, CROP_LABELS);
    if (!changes) data.version = version;
    await tx.crop.update({ where: { id }, data });
    if (whatItIs.name !== was.name || whatItIs.scientificName !== was.scientificName) {
      const accessions = await tx.accession.findMany({ where: { cropId: id }, select: { id: true } });
      for (const accession of accessions) await listAccessionWithoutSeed(tx, accession.id);
    }
    const lots = await tx.lot.findMany({ where: { accession: { cropId: id } }, select: { id: true } });
    rejudge(lots.map((lot) => lot.id));
    await audit({
      ...record,
      summary: `Changed crop ${data.name}: ${changes || 'nothing'}`,
      before,
      after: { ...after, version: data.version },
    });
    return { id };
  },
});
