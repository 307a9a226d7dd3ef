import type { Prisma } from '@/generated/prisma/client';
import type { StorageRow } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { fieldError } from './field-error';
import { requireCrop } from './require-crop';

interface ExperimentInput {
  name: string;
  species?: string;
  cropId?: string;
  notes?: string;
}

/**
 * What to store of an experiment besides its counts; a species that was left blank is the crop's.
 *
 * @throws AppError beside `cropId` when there is no such crop
 */
export async function experimentRecord(tx: Prisma.TransactionClient, input: ExperimentInput) {
  const crop = input.cropId ? await requireCrop(tx, input.cropId) : null;
  const ofCrop = input.cropId
    ? await tx.crop.findUniqueOrThrow({ where: { id: input.cropId }, select: { scientificName: true } })
    : null;
  const data = {
    name: input.name,
    species: input.species ?? (ofCrop?.scientificName as string),
    cropId: input.cropId ?? null,
    notes: input.notes ?? null,
  };
  return { data, crop };
}

/** @throws AppError beside `name` when another experiment has it */
export async function requireExperimentName(tx: Prisma.TransactionClient, name: string, exceptId = ''): Promise<void> {
  const [same] = await tx.$queryRaw<{ name: string }[]>`
    SELECT "name" FROM "StorageExperiment" WHERE "name" = ${name} COLLATE NOCASE AND "id" <> ${exceptId} LIMIT 1`;
  if (same) throw fieldError({ name: `There is an experiment ${same.name} already: choose another name.` });
}

/** Writes an experiment's counts anew, as a whole and in the order of the table. */
export async function writeExperimentRows(
  tx: Prisma.TransactionClient,
  experimentId: string,
  rows: readonly StorageRow[],
): Promise<void> {
  await tx.storageExperimentRow.deleteMany({ where: { experimentId } });
  await tx.storageExperimentRow.createMany({
    data: rows.map((row, index) => ({ experimentId, position: index + 1, ...row })),
  });
}

const ROW_COLUMNS = {
  lot: true,
  moisturePercent: true,
  temperatureC: true,
  days: true,
  sown: true,
  germinated: true,
} as const;

/** An experiment with its counts as the log of changes keeps it, or null. */
export async function readExperimentState(tx: Prisma.TransactionClient, id: string) {
  const stored = await tx.storageExperiment.findUnique({
    where: { id },
    select: {
      ...{ name: true, species: true, cropId: true, notes: true, version: true },
      crop: { select: { name: true } },
      rows: { select: ROW_COLUMNS, orderBy: { position: 'asc' } },
    },
  });
  if (!stored) return null;
  const { crop, rows, ...fields } = stored;
  return { ...fields, crop: crop?.name ?? null, counts: rows.length, rows };
}
