import { formatTemperature } from '@/app/_format/figures';
import type { StorageCondition } from '@/lib/domain/longevity/viability-equation';

/** 0.85 -> '85 %', 0.999 -> '99.9 %', no line broken before the sign; what is nearly all or nothing is never called so. */
export function percentOf(proportion: number): string {
  if (proportion < 0.0005) return 'under 0.1\u00a0%';
  return `${Math.min(99.9, Math.round(proportion * 1000) / 10)}\u00a0%`;
}

export const moistureOf = (percent: number): string => `${Math.round(percent * 10) / 10}\u00a0%`;

/** '5 °C and 6 % moisture'. */
export const conditionInWords = ({ moisturePercent, temperatureC }: StorageCondition): string =>
  `${formatTemperature(temperatureC)} and ${moistureOf(moisturePercent)} moisture`;

/** Rounded down to a tenth, so that what is said to reach a goal does reach it. */
export const atMost = (value: number): number => Math.floor(value * 10 + 1e-9) / 10;
