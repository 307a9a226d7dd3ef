/** What a storage experiment would have counted: seed drawn at its true viability, planned by published constants. */
import type { StorageRow } from '../../lib/domain/longevity/storage-experiment/storage-row';
import { sigmaDays } from '../../lib/domain/longevity/viability-equation';
import { getLongevityConstants } from '../../lib/domain/reference/longevity-constants';
import { normalCdf } from '../../lib/domain/statistics/normal-distribution';
import { randomFor } from '../random';
import type { ExperimentStory } from '../scenarios/storage-experiment';

/**
 * @returns a count of each lot before storage and one at each planned time, in whole days; times beyond the longest are
 *   brought forward to it
 * Checked in tests/seed-demo/load-demo.test.ts
 */
export function drawExperimentCounts(story: ExperimentStory, planning = 'onion'): StorageRow[] {
  const random = randomFor(`experiment ${story.name}`);
  const { seedsAtEachCount: sown, truth } = story;
  const planned = getLongevityConstants(planning);
  const draw = (probits: number) => random.binomial(sown, normalCdf(probits));
  const rows: StorageRow[] = [];
  for (const { lot, initialProbits } of story.lots) {
    rows.push({ lot, moisturePercent: null, temperatureC: null, days: 0, sown, germinated: draw(initialProbits) });
    for (const temperatureC of story.temperaturesC) {
      for (const moisturePercent of story.moisturesPercent) {
        const condition = { moisturePercent, temperatureC };
        const days = story.plannedLosses.map((loss) =>
          Math.min(story.longestDays, Math.max(1, Math.round(loss * sigmaDays(planned, condition)))),
        );
        for (const day of new Set(days)) {
          const germinated = draw(initialProbits - day / sigmaDays(truth, condition));
          rows.push({ lot, ...condition, days: day, sown, germinated });
        }
      }
    }
  }
  return rows;
}
