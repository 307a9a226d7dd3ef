import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { isFreeForTest } from '@/lib/domain/stock/free-withdrawal';
import { reader } from '../database/connections';
import { NAMED_BY_NO_TEST } from '../named-by-tests';
import { matching, where } from './list-page';

/** How a crop is tested, and the standard its seed is held against. */
export interface CropForTesting {
  id: string;
  name: string;
  scientificName: string;
  family: string;
  methods: TestingMethod[];
  /** one country's minimum for seed on sale; null where the reference has none */
  minimumStandard: { proportion: number; mark: string; source: string } | null;
}

export interface TestingMethod {
  id: string;
  substrata: string;
  temperatures: string;
  firstCountDays: number | null;
  finalCountDays: number | null;
  light: boolean;
  preTreatment: string | null;
  hardSeedOccurs: boolean;
  mark: string;
  source: string;
}

/** A lot about to be tested. */
export interface LotForTesting {
  number: string;
  harvestedOn: string;
  treatment: string | null;
  accessionNumber: string;
  accessionName: string;
  crop: CropForTesting;
  packets: { id: string; number: string; role: string; seeds: number }[];
  /** seed taken out for a test that no test has named yet, the latest first */
  takenOut: { id: string; packetNumber: string; on: string; seeds: number }[];
}

export const selectCropForTesting = {
  id: true,
  name: true,
  scientificName: true,
  family: true,
  germinationMethods: { omit: { cropId: true }, orderBy: { id: 'asc' } },
  facts: {
    where: { kind: 'minimum germination', lower: { gt: 0 } },
    orderBy: { id: 'asc' },
    select: { lower: true, mark: true, source: true },
  },
} satisfies Prisma.CropSelect;

type SelectedCrop = Prisma.CropGetPayload<{ select: typeof selectCropForTesting }>;

/** Shapes a crop read with `selectCropForTesting`; the bank's own standard wins over the reference. */
export function cropForTesting({ germinationMethods, facts, ...crop }: SelectedCrop): CropForTesting {
  const fact = facts.find((one) => one.mark === "bank's own") ?? facts[0];
  return {
    ...crop,
    methods: germinationMethods,
    minimumStandard: fact?.lower ? { proportion: fact.lower, mark: fact.mark, source: fact.source } : null,
  };
}

/**
 * A lot by its number, with its crop's methods and its packets, the fullest first.
 *
 * @returns null when there is no such lot
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function getLotForTesting(number: string): Promise<LotForTesting | null> {
  const lot = await reader().lot.findUnique({
    where: { number },
    select: {
      number: true,
      harvestedOn: true,
      treatment: true,
      accession: { select: { number: true, name: true, crop: { select: selectCropForTesting } } },
      packets: { select: { id: true, number: true, role: true } },
    },
  });
  if (!lot) return null;
  const takenOut = await findTakenOut(number);
  const sums = await reader().movement.groupBy({
    by: ['packetId'],
    where: { packetId: { in: lot.packets.map((packet) => packet.id) } },
    _sum: { seeds: true },
  });
  const seedsOf = new Map(sums.map((sum) => [sum.packetId, sum._sum.seeds ?? 0]));
  return {
    number: lot.number,
    harvestedOn: lot.harvestedOn,
    treatment: lot.treatment,
    accessionNumber: lot.accession.number,
    accessionName: lot.accession.name,
    crop: cropForTesting(lot.accession.crop),
    packets: lot.packets
      .map((packet) => ({ ...packet, seeds: seedsOf.get(packet.id) ?? 0 }))
      .sort((a, b) => Number(b.role === 'active') - Number(a.role === 'active') || b.seeds - a.seeds),
    takenOut,
  };
}

async function findTakenOut(lotNumber: string): Promise<LotForTesting['takenOut']> {
  const lines = await reader().movement.findMany({
    where: {
      packet: { lot: { number: lotNumber } },
      reason: 'test',
      corrected: null,
      ...NAMED_BY_NO_TEST,
    },
    orderBy: [{ on: 'desc' }, { id: 'desc' }],
    select: { id: true, on: true, reason: true, seeds: true, note: true, packet: { select: { number: true } } },
  });
  return lines
    .filter((line) => isFreeForTest({ ...line, usedBy: 0, takenBack: false }))
    .map(({ id, on, seeds, packet }) => ({ id, on, seeds: -seeds, packetNumber: packet.number }));
}

export interface LotChoice {
  number: string;
  accessionName: string;
  cropName: string;
  harvestedOn: string;
}

/**
 * Lots to choose from when what was typed is no lot number: all its words stand in the lot's number and names.
 *
 * @param text   what was typed
 * @param limit  most lots given
 * Checked in tests/server/queries/germination-tests.test.ts
 */
export async function findLotsToTest(text: string, limit = 12): Promise<LotChoice[]> {
  const words = matching('LotJudgement', text);
  if (words.length === 0) return [];
  return reader().$queryRaw<LotChoice[]>`
    SELECT "lotNumber" AS "number", "accessionName", "cropName", "harvestedOn" FROM "LotJudgement"
    ${where(words)} ORDER BY "harvestedOn" DESC, "lotNumber" LIMIT ${limit}`;
}
