/** A plan in groups as a tray keeps it, so that later groups are decided by the plan that the first was set by. */
import { z } from 'zod';
import type { SequentialPlan } from '../domain/germination/sample-size/sequential-plan';

const seeds = z.number().int();

const storedPlan = z.object({
  /** viability at which the lot is regrown, as it was planned for; proportion */
  line: z.number().gt(0).lt(1).optional(),
  looks: z
    .array(
      z.object({
        seedsTested: seeds.min(1),
        regrowAtMost: seeds.min(0).nullable(),
        keepAtLeast: seeds.min(0).nullable(),
      }),
    )
    .min(1),
});

export type StoredPlan = z.output<typeof storedPlan>;

/**
 * The plan of a tray.
 *
 * @param text  what the column holds; null for a fixed test
 * @throws SyntaxError or ZodError when it is no plan: it was not written by Hilum
 * Checked in tests/schemas/sequential-plan.test.ts
 */
export function parseSequentialPlan(text: string | null): StoredPlan | null {
  return text === null ? null : storedPlan.parse(JSON.parse(text));
}

/** The plan as the column holds it. */
export function sequentialPlanText({ line, looks }: SequentialPlan & { line: number }): string {
  return JSON.stringify(storedPlan.parse({ line, looks }));
}
