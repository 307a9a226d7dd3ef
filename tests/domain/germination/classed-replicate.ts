import type { ClassedReplicate } from '../../../lib/domain/germination/seed-classes';

/** A dish in which whatever is not named is dead. */
export function dish(seeds: number, named: Partial<Omit<ClassedReplicate, 'seeds' | 'dead'>>): ClassedReplicate {
  const { normal = 0, abnormal = 0, hard = 0, fresh = 0 } = named;
  return { seeds, normal, abnormal, hard, fresh, dead: seeds - normal - abnormal - hard - fresh };
}

/** Dishes of one size with these normal seedlings, the rest dead. */
export function dishes(seeds: number, normals: readonly number[]): ClassedReplicate[] {
  return normals.map((normal) => dish(seeds, { normal }));
}
