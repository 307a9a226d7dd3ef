/*
 * What somebody writes down at the bench: the seeds found in one dish on one day. What is found is taken out, so the
 * days of a dish add up, and what was not found yet still lies there.
 *
 * Several phones count without a connection, so a dish's day may be written down more than once. Each count names those
 * of the same dish and day that its writer saw and meant to replace; nothing else is ever overwritten. Order of arrival
 * does not matter, and the same count twice is one count. (A register with several values, as in Shapiro et al. 2011,
 * 'A comprehensive study of convergent and commutative replicated data types', INRIA RR-7506, section 3.2.2.)
 */
import { type ClassCounts, SEED_CLASSES } from '../seed-classes';

export interface TrayCount {
  /** UUIDv7, made where it was entered */
  id: string;
  dishId: string;
  /** calendar day at the bench, 'YYYY-MM-DD' */
  on: string;
  /** seeds found and taken out on that day, by class, integers >= 0; null: the count of that day is taken back */
  found: ClassCounts | null;
  /** ids of the counts of this dish and day that it replaces */
  replaces: readonly string[];
}

export const NOTHING_FOUND: ClassCounts = { normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 };

/**
 * Seeds of all classes together.
 *
 * @param found  counts of seeds by class
 * @returns count, integer >= 0
 * Checked in tests/domain/germination/bench/day-counts.test.ts
 */
export function seedsFound(found: ClassCounts): number {
  return SEED_CLASSES.reduce((sum, seedClass) => sum + found[seedClass], 0);
}

/**
 * Whether two counts say the same.
 *
 * @returns true when both are taken back, or every class is equal
 * Checked in tests/domain/germination/bench/day-counts.test.ts
 */
export function sayTheSame(one: ClassCounts | null, other: ClassCounts | null): boolean {
  if (one === null || other === null) return one === other;
  return SEED_CLASSES.every((seedClass) => one[seedClass] === other[seedClass]);
}
