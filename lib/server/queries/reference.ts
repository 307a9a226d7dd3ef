import 'server-only';
import { reader } from '../database/connections';

/** A set of longevity constants: its figures, how sure they are, where they hold and where they come from. */
export const CONSTANTS_FIELDS = {
  id: true,
  name: true,
  KE: true,
  CW: true,
  CH: true,
  CQ: true,
  standardErrorKE: true,
  standardErrorCW: true,
  moistureFromPercent: true,
  moistureToPercent: true,
  temperatureFromC: true,
  temperatureToC: true,
  lowMoistureLimitPercent: true,
  mark: true,
  source: true,
} as const;

/** Longevity constants with how many crops use them. */
export async function findLongevityConstants() {
  return reader().longevityConstants.findMany({
    orderBy: { name: 'asc' },
    select: {
      ...CONSTANTS_FIELDS,
      species: true,
      crops: { select: { id: true, name: true, constantsBorrowed: true }, orderBy: { name: 'asc' } },
    },
  });
}

export type LongevityConstantsRow = Awaited<ReturnType<typeof findLongevityConstants>>[number];

/** The four constants of a set with its name, or null. */
export async function getConstants(id: string) {
  return reader().longevityConstants.findUnique({
    where: { id },
    select: { id: true, name: true, KE: true, CW: true, CH: true, CQ: true },
  });
}
