import 'server-only';
import type { SeedKind } from '@/lib/domain/longevity/seed-kind';
import { STORAGE_BEHAVIOURS } from '@/lib/domain/reference/crop-facts';
import { reader } from '../database/connections';
import { CONSTANTS_FIELDS } from './reference';

/** Seed as the storage-life calculator reckons with it, and where each figure of it comes from. */
export interface StoredSeed {
  seed: SeedKind;
  cropName: string | null;
  constants: {
    id: string;
    name: string;
    mark: string;
    source: string;
    standardErrorKE: number | null;
    standardErrorCW: number | null;
  };
  /** the constants were fitted to another crop, or chosen in place of the crop's */
  borrowed: boolean;
  borrowedBecause: string | null;
  oilKnown: boolean;
}

const OIL = { where: { kind: 'oil fraction' }, select: { lower: true, upper: true } } as const;

/**
 * The seed of a crop, of constants, or of a crop with other constants than its own.
 *
 * @returns null when neither exists, or when the crop has no constants and none were named
 */
export async function getStoredSeed(asked: { crop?: string; constants?: string }): Promise<StoredSeed | null> {
  const [crop, chosen] = await Promise.all([
    asked.crop ? findCrop(asked.crop) : null,
    asked.constants
      ? reader().longevityConstants.findUnique({ where: { id: asked.constants }, select: CONSTANTS_FIELDS })
      : null,
  ]);
  const constants = chosen ?? crop?.longevityConstants;
  if (!constants) return null;
  const replaced = chosen !== null && chosen.id !== crop?.longevityConstants?.id;
  const oilFraction = meanOil(crop?.facts ?? (await oilOfOwnCrop(constants.id)));
  return {
    seed: {
      constants: { KE: constants.KE, CW: constants.CW, CH: constants.CH, CQ: constants.CQ },
      constantsRange: {
        moistureFromPercent: constants.moistureFromPercent ?? undefined,
        moistureToPercent: constants.moistureToPercent ?? undefined,
        temperatureFromC: constants.temperatureFromC ?? undefined,
        temperatureToC: constants.temperatureToC ?? undefined,
        lowMoistureLimitPercent: constants.lowMoistureLimitPercent ?? undefined,
      },
      storageBehaviour: STORAGE_BEHAVIOURS.find((behaviour) => behaviour === crop?.storageBehaviour) ?? 'orthodox',
      oilFraction: oilFraction ?? 0,
    },
    cropName: crop?.name ?? null,
    constants,
    borrowed: crop !== null && (replaced || crop.constantsBorrowed),
    borrowedBecause: replaced ? null : (crop?.borrowedBecause ?? null),
    oilKnown: oilFraction !== null,
  };
}

function findCrop(id: string) {
  return reader().crop.findUnique({
    where: { id },
    select: {
      name: true,
      storageBehaviour: true,
      constantsBorrowed: true,
      borrowedBecause: true,
      longevityConstants: { select: CONSTANTS_FIELDS },
      facts: OIL,
    },
  });
}

/** Oil of a crop to which the constants belong, for constants asked about without a crop. */
async function oilOfOwnCrop(constantsId: string) {
  const crop = await reader().crop.findFirst({
    where: { longevityConstantsId: constantsId, constantsBorrowed: false },
    orderBy: { name: 'asc' },
    select: { facts: OIL },
  });
  return crop?.facts ?? [];
}

/** The middle of what the sources say, as the judging of lots takes it; null where none says anything. */
function meanOil(facts: { lower: number | null; upper: number | null }[]): number | null {
  const lowers = facts.flatMap(({ lower }) => (lower === null ? [] : [lower]));
  const uppers = facts.flatMap(({ upper }) => (upper === null ? [] : [upper]));
  return lowers.length === 0 || uppers.length === 0 ? null : (Math.min(...lowers) + Math.max(...uppers)) / 2;
}

/**
 * Crops whose storage life can be worked out, to choose from; `own` where the constants were fitted to the crop itself,
 * `published` where they were read in print.
 */
export async function findCropsWithConstants(): Promise<
  { id: string; name: string; own: boolean; published: boolean }[]
> {
  const crops = await reader().crop.findMany({
    where: { longevityConstantsId: { not: null } },
    orderBy: { name: 'asc' },
    select: { id: true, name: true, constantsBorrowed: true, longevityConstants: { select: { mark: true } } },
  });
  return crops.map(({ id, name, constantsBorrowed, longevityConstants }) => ({
    id,
    name,
    own: !constantsBorrowed,
    published: longevityConstants?.mark === 'published',
  }));
}
