/** The experiments of tests/golden/storage-experiment.json, and small ones written by hand. */
import type { TemperatureCoefficients } from '../../../../lib/domain/longevity/storage-experiment/experiment-fit';
import type { StorageRow } from '../../../../lib/domain/longevity/storage-experiment/storage-row';
import { goldenRows } from '../../../support/golden-table';

interface GoldenRow {
  name: string;
  temperatureCoefficients: TemperatureCoefficients;
  held: [number, number];
  truth: [number, number, number, number];
  lot: number[];
  moisture: (number | null)[];
  temperature: (number | null)[];
  days: number[];
  sown: number[];
  germinated: number[];
  estimates: number[];
  covariance: number[];
  deviance: number;
  pearsonChiSquare: number;
  degreesOfFreedom: number;
  chance: number | null;
}

export interface GoldenExperiment extends Omit<GoldenRow, 'held'> {
  held: { CH: number; CQ: number };
  rows: StorageRow[];
}

export const goldenExperiments = (): GoldenExperiment[] =>
  goldenRows<GoldenRow>('storage-experiment', 'fits').map((golden) => ({
    ...golden,
    held: { CH: golden.held[0], CQ: golden.held[1] },
    rows: golden.days.map((days, i) => ({
      lot: `lot ${golden.lot[i]}`,
      moisturePercent: golden.moisture[i] ?? null,
      temperatureC: golden.temperature[i] ?? null,
      days,
      sown: golden.sown[i] as number,
      germinated: golden.germinated[i] as number,
    })),
  }));

export function goldenExperiment(name: string): GoldenExperiment {
  const found = goldenExperiments().find((golden) => golden.name === name);
  if (!found) throw new Error(`no experiment ${name} in the golden table`);
  return found;
}

/** Counts of one lot in one condition: [days, germinated] of `sown` seeds each. */
export function condition(
  moisturePercent: number,
  temperatureC: number,
  counts: readonly (readonly [number, number])[],
  { lot = 'A', sown = 50 }: { lot?: string; sown?: number } = {},
): StorageRow[] {
  return counts.map(([days, germinated]) => ({ lot, moisturePercent, temperatureC, days, sown, germinated }));
}
