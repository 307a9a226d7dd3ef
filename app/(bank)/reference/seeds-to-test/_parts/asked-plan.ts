import type { z } from 'zod';
import { deriveSequentialPlan } from '@/lib/domain/germination/sample-size/derive-sequential-plan';
import { operatingCharacteristic } from '@/lib/domain/germination/sample-size/operating-characteristic';
import {
  PUBLISHED_PLAN_LINE,
  PUBLISHED_SEQUENTIAL_PLAN,
} from '@/lib/domain/germination/sample-size/published-sequential-plan';
import { seedsToTell } from '@/lib/domain/germination/sample-size/seeds-to-tell';
import type { SequentialPlan } from '@/lib/domain/germination/sample-size/sequential-plan';
import type { groupsQuestion } from '@/lib/schemas/calculators/seeds-to-test';

export type AskedPlan = z.infer<typeof groupsQuestion>;

/** The plan asked for, the single test of the same limits, and the printed plan where it is meant for this line. */
export function workOutPlan(asked: AskedPlan) {
  const line = asked.line / 100;
  const goal = {
    poor: (asked.line - asked.points) / 100,
    good: (asked.line + asked.points) / 100,
    falseKeep: asked.wrongKeep,
    falseRegrow: asked.wrongRegrow,
  };
  const derived = deriveSequentialPlan({ ...goal, groupSize: asked.group, maxSeeds: asked.most });
  const isPrintedLine = Math.abs(line - PUBLISHED_PLAN_LINE) < 0.005;
  return { line, goal, derived, single: seedsToTell(goal), printed: isPrintedLine ? PUBLISHED_SEQUENTIAL_PLAN : null };
}

/** True germinations worth a row: the line, the two lots to be told apart, and some beyond. */
export function germinationsShown(asked: AskedPlan): number[] {
  const rows = [-3, -2, -1, -0.5, 0, 0.5, 1, 2, 3].map((steps) => asked.line + steps * asked.points);
  return rows.filter((percent) => percent >= 0 && percent <= 100).map((percent) => percent / 100);
}

/** Chance of regrowing along the true germination, for the picture, and the range that it covers. */
export function regrowCurve(
  plan: SequentialPlan,
  [from, to]: readonly [number, number],
): (readonly [number, number])[] {
  const STEPS = 60;
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const germination = from + ((to - from) * step) / STEPS;
    return [germination, operatingCharacteristic(plan, germination).regrow] as const;
  });
}

export function pictureRange(asked: AskedPlan): readonly [number, number] {
  return [Math.max(0, asked.line - 4 * asked.points) / 100, Math.min(100, asked.line + 4 * asked.points) / 100];
}
