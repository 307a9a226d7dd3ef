import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import { type CropListQuery, type CropSort, readSort } from '@/lib/schemas/list-query';
import { reader } from '../database/connections';
import { searchWords } from '../judging/search-text';
import { type ListPage, PAGE_SIZE, pageOf, where } from './list-page';

export interface CropListRow {
  id: string;
  name: string;
  scientificName: string;
  family: string;
  pollination: string;
  lifeCycle: string;
  accessions: number;
}

const COLUMNS: Record<CropSort, string> = {
  name: `c."name"`,
  scientific: `c."scientificName"`,
  family: `c."family"`,
  accessions: `"accessions"`,
};

/** One page of crops. There are hundreds at most, so the table is sorted as it comes. */
export async function findCrops(query: CropListQuery): Promise<ListPage<CropListRow>> {
  const conditions = searchWords(query.q).map((word) => {
    const pattern = `%${word.replace(/[\\%_]/g, '\\$&')}%`;
    return Prisma.sql`lower(c."name" || ' ' || c."scientificName" || ' ' || c."family") LIKE ${pattern} ESCAPE '\\'`;
  });
  if (query.family) conditions.push(Prisma.sql`c."family" = ${query.family}`);
  const [counted] = await reader().$queryRaw<{ total: bigint }[]>`
    SELECT COUNT(*) AS total FROM "Crop" c ${where(conditions)}`;
  const total = Number(counted?.total ?? 0);
  const { page, pages, offset } = pageOf(query.page, total);
  const { key, descending } = readSort<CropSort>(query.sort);
  const order = Prisma.raw(`ORDER BY ${COLUMNS[key]} ${descending ? 'DESC' : 'ASC'}, c."name"`);
  const rows = await reader().$queryRaw<CropListRow[]>`
    SELECT c."id", c."name", c."scientificName", c."family", c."pollination", c."lifeCycle",
      (SELECT COUNT(*) FROM "Accession" a WHERE a."cropId" = c."id") AS "accessions"
    FROM "Crop" c ${where(conditions)} ${order} LIMIT ${PAGE_SIZE} OFFSET ${offset}`;
  return { rows: rows.map((row) => ({ ...row, accessions: Number(row.accessions) })), total, page, pages };
}

export async function findFamilies(): Promise<string[]> {
  const rows = await reader().crop.findMany({
    distinct: ['family'],
    orderBy: { family: 'asc' },
    select: { family: true },
  });
  return rows.map((row) => row.family);
}

/** Every crop, to choose from in a form. */
export async function findCropChoices(): Promise<{ id: string; name: string }[]> {
  return reader().crop.findMany({ orderBy: { name: 'asc' }, select: { id: true, name: true } });
}

/** Crops of which the bank keeps something, for the filters of lists. */
export async function findKeptCrops(): Promise<{ id: string; name: string }[]> {
  return reader().crop.findMany({
    where: { accessions: { some: {} } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true },
  });
}

/** Longevity constants to choose from in a crop's form. */
export async function findConstantsChoices(): Promise<{ id: string; name: string; species: string }[]> {
  return reader().longevityConstants.findMany({
    orderBy: { name: 'asc' },
    select: { id: true, name: true, species: true },
  });
}

/** Everything known of a crop, each figure with its source; null when there is no such crop. */
export async function getCrop(id: string) {
  return reader().crop.findUnique({
    where: { id },
    select: {
      id: true,
      name: true,
      scientificName: true,
      family: true,
      pollination: true,
      lifeCycle: true,
      storageBehaviour: true,
      longevityConstantsId: true,
      constantsBorrowed: true,
      borrowedBecause: true,
      plantsNeeded: true,
      thresholdKind: true,
      thresholdValue: true,
      sowingMonth: true,
      emergence: true,
      priorInitialMean: true,
      priorInitialSd: true,
      priorLogRateMean: true,
      priorLogRateSd: true,
      notes: true,
      version: true,
      longevityConstants: {
        select: {
          name: true,
          species: true,
          KE: true,
          CW: true,
          CH: true,
          CQ: true,
          moistureFromPercent: true,
          moistureToPercent: true,
          temperatureFromC: true,
          temperatureToC: true,
          lowMoistureLimitPercent: true,
          mark: true,
          source: true,
        },
      },
      facts: {
        orderBy: [{ kind: 'asc' }, { id: 'asc' }],
        select: { id: true, kind: true, lower: true, upper: true, text: true, mark: true, source: true },
      },
      germinationMethods: {
        orderBy: { id: 'asc' },
        select: {
          id: true,
          substrata: true,
          temperatures: true,
          firstCountDays: true,
          finalCountDays: true,
          light: true,
          preTreatment: true,
          hardSeedOccurs: true,
          mark: true,
          source: true,
        },
      },
      _count: { select: { accessions: true } },
    },
  });
}

export type CropDetail = NonNullable<Awaited<ReturnType<typeof getCrop>>>;
