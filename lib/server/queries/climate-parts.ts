import 'server-only';
import type { StoreClimate } from '@/lib/domain/longevity/store-climate';
import { SECONDS_PER_DAY } from '@/lib/domain/longevity/store-day';
import type { StoreTargets } from '@/lib/domain/stock/store-phases';
import type { StoreClimates } from '../judging/store-climates';

/** A stretch of days through which the same logger and the same target counted in a store. */
export interface ClimatePart {
  fromDay: number;
  /** not included */
  toDay: number;
  /** the store whose readings count; null: none were taken */
  loggedIn: { id: string; name: string } | null;
  target: StoreTargets;
  /** the store whose target it is */
  targetOf: { id: string; name: string };
}

export type PartWithClimate = ClimatePart & { climate: StoreClimate };

export interface DaysAsked {
  fromDay: number;
  /** not included */
  toDay: number;
}

/** The parts of a store's history that a stretch of days touches, cut to it. */
export function climateParts(
  climates: StoreClimates,
  storeId: string,
  { fromDay, toDay }: DaysAsked,
): PartWithClimate[] {
  const named = (id: string) => ({ id, name: climates.nameOf(id) });
  const all = climates.climatesThrough(storeId).map(({ climateId }): PartWithClimate => {
    const source = climates.sourceOf(climateId);
    return {
      fromDay: source.fromDay,
      toDay: source.toDay,
      loggedIn: source.loggedStoreId === null ? null : named(source.loggedStoreId),
      target: source.target,
      targetOf: named(source.targetStoreId),
      climate: climates.climateOf(climateId),
    };
  });
  return cutTo(all, { fromDay, toDay });
}

/** The parts that some days touch, cut to them. */
export function cutTo(parts: readonly PartWithClimate[], { fromDay, toDay }: DaysAsked): PartWithClimate[] {
  return parts.flatMap((part) => {
    const [from, to] = [Math.max(fromDay, part.fromDay), Math.min(toDay, part.toDay)];
    return from < to ? [{ ...part, fromDay: from, toDay: to }] : [];
  });
}

/** Its midnights, in seconds since 1970-01-01 UTC. */
export const secondsOf = ({ fromDay, toDay }: DaysAsked): [number, number] => [
  fromDay * SECONDS_PER_DAY,
  toDay * SECONDS_PER_DAY,
];
