import { SEED_CLASSES, type SeedClass } from '@/lib/domain/germination/seed-classes';

/** A row of the form as it is being typed. */
export type ReplicateDraft = Record<'seeds' | SeedClass, string>;

export const blankDraft = (seeds: string): ReplicateDraft => ({
  seeds,
  normal: '',
  abnormal: '',
  hard: '',
  fresh: '',
  dead: '',
});

export interface DraftCounts {
  seeds: number;
  counts: Partial<Record<SeedClass, number>>;
  /** something was written in a class */
  begun: boolean;
  /** seeds not classed yet; negative when more are classed than were set */
  left: number;
  /** dead was left blank, so what is left will be taken as dead */
  restIsDead: boolean;
}

/**
 * What a row says so far. Only for drawing and for the running sum: what is saved is read anew on the server.
 *
 * @param draft  texts of the boxes; what is no whole number counts as nothing yet
 * Checked in tests/app/replicate-draft.test.ts
 */
export function readDraft(draft: ReplicateDraft): DraftCounts {
  const seeds = whole(draft.seeds) ?? 0;
  const counts: DraftCounts['counts'] = {};
  let classed = 0;
  for (const seedClass of SEED_CLASSES) {
    const count = whole(draft[seedClass]);
    if (count === null) continue;
    counts[seedClass] = count;
    classed += count;
  }
  return {
    seeds,
    counts,
    begun: Object.keys(counts).length > 0,
    left: seeds - classed,
    restIsDead: draft.dead.trim() === '',
  };
}

function whole(text: string): number | null {
  return /^\s*\d{1,6}\s*$/.test(text) ? Number(text) : null;
}

/**
 * The rows that a form answered with, so that nothing typed is lost.
 *
 * @param values  fields of the form as sent, by name: 'replicates.0.seeds'
 * @returns rows up to the last that was sent; null when there was none
 * Checked in tests/app/replicate-draft.test.ts
 */
export function draftsFromFields(values: Record<string, string>): ReplicateDraft[] | null {
  const drafts: ReplicateDraft[] = [];
  for (const [name, value] of Object.entries(values)) {
    const [, row, box] = /^replicates\.(\d{1,2})\.(\w+)$/.exec(name) ?? [];
    if (row === undefined || box === undefined || !isBox(box)) continue;
    while (drafts.length <= Number(row)) drafts.push(blankDraft(''));
    (drafts[Number(row)] as ReplicateDraft)[box] = value;
  }
  return drafts.length > 0 ? drafts : null;
}

const isBox = (box: string): box is keyof ReplicateDraft =>
  box === 'seeds' || (SEED_CLASSES as readonly string[]).includes(box);
