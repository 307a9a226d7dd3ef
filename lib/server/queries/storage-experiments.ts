import 'server-only';
import { conditionsOf, lotsOf } from '@/lib/domain/longevity/storage-experiment/storage-row';
import { reader } from '../database/connections';

const ROW = {
  lot: true,
  moisturePercent: true,
  temperatureC: true,
  days: true,
  sown: true,
  germinated: true,
} as const;

/** Every storage experiment with what it holds, by name. A bank has a handful. */
export async function findStorageExperiments() {
  const experiments = await reader().storageExperiment.findMany({
    orderBy: { name: 'asc' },
    select: {
      ...{ id: true, name: true, species: true, createdAt: true },
      crop: { select: { id: true, name: true } },
      rows: { select: ROW, orderBy: { position: 'asc' } },
    },
  });
  return experiments.map(({ rows, ...experiment }) => ({
    ...experiment,
    counts: rows.length,
    seeds: rows.reduce((sum, row) => sum + row.sown, 0),
    lots: lotsOf(rows).length,
    conditions: conditionsOf(rows).length,
    longestDays: rows.reduce((longest, row) => Math.max(longest, row.days), 0),
  }));
}

/** One storage experiment with its counts in the order of its table, or null. */
export async function getStorageExperiment(id: string) {
  return reader().storageExperiment.findUnique({
    where: { id },
    select: {
      ...{ id: true, name: true, species: true, notes: true, createdAt: true, version: true },
      crop: { select: { id: true, name: true } },
      rows: { select: ROW, orderBy: { position: 'asc' } },
    },
  });
}

/** Constants that were saved from an experiment: their source names it. */
export async function findConstantsNaming(experimentName: string) {
  return reader().longevityConstants.findMany({
    where: { mark: "bank's own", source: { contains: `“${experimentName}”` } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true },
  });
}

export type StorageExperimentSummary = Awaited<ReturnType<typeof findStorageExperiments>>[number];
