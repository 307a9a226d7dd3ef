/** What a germination test of a lot would show: seeds drawn at the lot's true viability, dishes a little uneven. */
import { normalCdf } from '../../lib/domain/statistics/normal-distribution';
import type { Random } from '../random';

export interface ReplicateCounts {
  seeds: number;
  normal: number;
  abnormal: number;
  hard: number;
  fresh: number;
  dead: number;
}

export interface TestOutcomeInput {
  /** true viability on the day, probits */
  viabilityProbit: number;
  replicates: number;
  seedsPerReplicate: number;
  /** of the seeds alive, those that take no water; 0-1 */
  hardShare: number;
  /** of the seeds alive and not hard, those that are dormant; 0-1 */
  freshShare: number;
  random: Random;
}

/** How much dishes of one test differ in truth, probits. A warm corner or a wet paper does that much. */
const UNEVENNESS_PROBITS = 0.07;
/** Of the seeds that give no sound seedling, those that still try. */
const ABNORMAL_SHARE = 0.3;

/**
 * @returns one row a replicate; the classes add to the seeds set
 * Checked in tests/seed-demo/test-outcome.test.ts
 */
export function drawTestOutcome(input: TestOutcomeInput): ReplicateCounts[] {
  const { viabilityProbit, replicates, seedsPerReplicate: seeds, hardShare, freshShare, random } = input;
  return Array.from({ length: replicates }, () => {
    const alive = random.binomial(seeds, normalCdf(viabilityProbit + UNEVENNESS_PROBITS * random.normal()));
    const hard = random.binomial(alive, hardShare);
    const fresh = random.binomial(alive - hard, freshShare);
    const abnormal = random.binomial(seeds - alive, ABNORMAL_SHARE);
    return { seeds, normal: alive - hard - fresh, abnormal, hard, fresh, dead: seeds - alive - abnormal };
  });
}
