import type { SequentialPlan } from '../../../../lib/domain/germination/sample-size/sequential-plan';
import { goldenRows } from '../../../support/golden-table';

interface PlanRow {
  plan: string;
  seedsTested: number[];
  regrowAtMost: (number | null)[];
  keepAtLeast: (number | null)[];
}

const rows = goldenRows<PlanRow>('sequential-plan', 'plans');

/** The plans of tests/golden/sequential-plan.json, by name. */
export function goldenPlan(name: string): SequentialPlan {
  const row = rows.find(({ plan }) => plan === name);
  if (!row) throw new Error(`no plan ${name} in tests/golden/sequential-plan.json`);
  return {
    looks: row.seedsTested.map((seedsTested, look) => ({
      seedsTested,
      regrowAtMost: row.regrowAtMost[look] ?? null,
      keepAtLeast: row.keepAtLeast[look] ?? null,
    })),
  };
}
