import fc from 'fast-check';
import type { SequentialLook, SequentialPlan } from '../../../../lib/domain/germination/sample-size/sequential-plan';

/** Any plan of one to five groups of up to 30 seeds, its last look deciding or not. More would only be slower. */
export const anyPlan: fc.Arbitrary<SequentialPlan> = fc
  .array(
    fc.record({
      group: fc.integer({ min: 1, max: 30 }),
      low: fc.double({ min: 0, max: 1, noNaN: true }),
      gap: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    { minLength: 1, maxLength: 5 },
  )
  .map((groups) => {
    const looks: SequentialLook[] = [];
    let seedsTested = 0;
    for (const { group, low, gap } of groups) {
      seedsTested += group;
      const from = Math.floor(low * (seedsTested + 1));
      const until = Math.min(from + Math.floor(gap * (seedsTested + 1)), seedsTested + 1);
      looks.push({
        seedsTested,
        regrowAtMost: from === 0 ? null : from - 1,
        keepAtLeast: until > seedsTested ? null : until,
      });
    }
    return { looks };
  });
