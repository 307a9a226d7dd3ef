/** On which day each seed of a dish is found: seedlings come up along a Weibull curve, the rest is told at the last count. */
import type { ClassCounts } from '../../lib/domain/germination/seed-classes';
import type { Random } from '../random';
import type { ReplicateCounts } from './test-outcome';

export interface CourseInput {
  /** what the dish comes to when all of it is classed */
  outcome: ReplicateCounts;
  /** days after setting on which it is counted, ascending */
  countedOnDays: readonly number[];
  /** days after setting at which about two thirds of the seedlings are large enough to be counted */
  mostByDay: number;
  /** all that is left is classed on the last of these days */
  closed: boolean;
  random: Random;
}

/** Before this share of the time nothing is large enough; the rest is the scale of the curve. */
const LAG_SHARE = 0.35;
/** Seedlings bunch around their time, with a tail of late ones. */
const SHAPE = 1.8;
/** With scale (1 - lag) of the time, 1 - exp(-(scale / 0.95)^shape) of the seedlings are there: two thirds. */
const SCALE_SHARE = 0.95 * (1 - LAG_SHARE);
/** Of dead seed, what is mouldy early on and taken out so that it spoils nothing else. */
const MOULDY_SHARE = 0.3;

/**
 * @returns what is found on each day, in order; classes of all days add to the outcome when the test is closed
 * Checked in tests/seed-demo/germination-course.test.ts
 */
export function drawCourse({ outcome, countedOnDays, mostByDay, closed, random }: CourseInput): ClassCounts[] {
  const found = countedOnDays.map((): ClassCounts => ({ normal: 0, abnormal: 0, hard: 0, fresh: 0, dead: 0 }));
  const last = found.length - 1;
  const finding = (seedClass: keyof ClassCounts, day: number) => {
    const seen = countedOnDays.findIndex((counted) => counted >= day);
    const at = seen < 0 && closed ? last : seen;
    const count = found[at];
    if (count) count[seedClass] += 1;
  };
  const comesUpOn = () => mostByDay * (LAG_SHARE + SCALE_SHARE * (-Math.log(1 - random.fraction())) ** (1 / SHAPE));
  for (let seed = 0; seed < outcome.normal; seed += 1) finding('normal', comesUpOn());
  // What is crippled is left until it is sure that nothing becomes of it.
  for (let seed = 0; seed < outcome.abnormal; seed += 1) finding('abnormal', 1.5 * comesUpOn());
  for (let seed = 0; seed < outcome.dead; seed += 1) {
    finding('dead', random.fraction() < MOULDY_SHARE ? comesUpOn() : Number.POSITIVE_INFINITY);
  }
  for (const seedClass of ['hard', 'fresh'] as const) {
    for (let seed = 0; seed < outcome[seedClass]; seed += 1) finding(seedClass, Number.POSITIVE_INFINITY);
  }
  return found;
}
