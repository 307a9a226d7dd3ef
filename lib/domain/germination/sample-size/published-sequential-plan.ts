/*
 * The printed sequential test for a line at 85 % germination, in groups of 40 seeds.
 */
import type { SequentialLook, SequentialPlan } from './sequential-plan';

export interface PublishedLook extends SequentialLook {
  mark: 'published' | 'from memory';
}

export interface PublishedPlan extends SequentialPlan {
  looks: readonly PublishedLook[];
}

/** The line that the printed table is for, proportion. */
export const PUBLISHED_PLAN_LINE = 0.85;

/**
 * Regrow and keep limits by seeds tested. Its error rates are computed, not printed: see operatingCharacteristic.
 *
 * Rows 40 and 80: published (genebank manual of 2006, flowchart 8.1, read in a copy). Rows 120 to 400: from memory of
 * Ellis, Hong & Roberts 1985 and Hanson 1985; not checked on the printed page.
 * Checked in tests/domain/germination/sample-size/published-sequential-plan.test.ts
 */
export const PUBLISHED_SEQUENTIAL_PLAN: PublishedPlan = {
  looks: [
    { seedsTested: 40, regrowAtMost: 29, keepAtLeast: null, mark: 'published' },
    { seedsTested: 80, regrowAtMost: 64, keepAtLeast: 76, mark: 'published' },
    { seedsTested: 120, regrowAtMost: 100, keepAtLeast: 111, mark: 'from memory' },
    { seedsTested: 160, regrowAtMost: 135, keepAtLeast: 146, mark: 'from memory' },
    { seedsTested: 200, regrowAtMost: 170, keepAtLeast: 181, mark: 'from memory' },
    { seedsTested: 240, regrowAtMost: 205, keepAtLeast: 216, mark: 'from memory' },
    { seedsTested: 280, regrowAtMost: 240, keepAtLeast: 251, mark: 'from memory' },
    { seedsTested: 320, regrowAtMost: 275, keepAtLeast: 286, mark: 'from memory' },
    { seedsTested: 360, regrowAtMost: 310, keepAtLeast: 321, mark: 'from memory' },
    { seedsTested: 400, regrowAtMost: 340, keepAtLeast: 341, mark: 'from memory' },
  ],
};
