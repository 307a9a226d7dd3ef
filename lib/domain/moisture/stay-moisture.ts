/**
 * What a packet's moisture tests say of its stays.
 *
 * A sealed container keeps its moisture, so a test of the packet on any day of a sealed stay holds for all of it, the
 * days before the test too. It fills in a moisture that nobody wrote down; one that was written is never changed (what
 * contradicts it is told by seal-doubt.ts). In an open container seed follows the air of the store: a test there is
 * one day's moisture and fills nothing.
 *
 * A stay that begins in another store, in the same kind of sealed container and again without a written moisture, is the
 * same container carried there: a test in one of them holds for both. One that begins in the same store is a repacking,
 * and ends the seal. Status: our own choice; whoever repacks and moves in one step writes the moisture.
 */
import type { CalendarDate } from '../calendar/calendar-date';
import { isHermetic } from '../stock/containers';
import type { Placement } from '../stock/storage-history';
import type { MeasuredMoisture } from './moisture-source';

/** A test of the packet's own seed that no later entry corrects. */
export interface PacketMoistureTest {
  number: string;
  testedOn: CalendarDate;
  /** percent of fresh weight, in (0, 100) */
  moisturePercent: number;
  /** one standard deviation of the result, points, > 0: the method's, or half the range of dishes that differ more */
  standardPoints: number;
}

/**
 * A packet's placements with the moisture of sealed stays filled in from its tests.
 *
 * Several tests are averaged, each weighted by 1 / standardPoints^2: the most likely common value of independent results
 * with these standard deviations. So an oven counts 25 times as much as the air over the seed.
 *
 * @param placements  in the order they happened
 * @param tests       of this packet, in any order, corrected ones left out
 * @returns the placements in order; those filled in have `moisturePercent` and `measured`, all others are as they were
 * @throws RangeError when a container is unknown, or a test's moisture or standard deviation is outside its range
 * @see weighted mean: general method. That a seal keeps moisture: the assumption on which sealed storage rests
 * Checked in tests/domain/moisture/stay-moisture.test.ts
 */
export function stayMoistures<Stay extends Placement>(
  placements: readonly Stay[],
  tests: readonly PacketMoistureTest[],
): Stay[] {
  if (tests.length === 0) return [...placements];
  for (const { number, moisturePercent, standardPoints } of tests) {
    if (!(moisturePercent > 0 && moisturePercent < 100 && standardPoints > 0)) {
      throw new RangeError(
        `stayMoistures: test ${number} must have a moisture in (0, 100) and standardPoints > 0, got ${moisturePercent} and ${standardPoints}`,
      );
    }
  }
  const filled = [...placements];
  let start = 0;
  while (start < placements.length) {
    const end = endOfSeal(placements, start);
    if (isUnwrittenSeal(placements[start] as Stay)) {
      const within = testsWithin(tests, placements[start]?.from as CalendarDate, placements[end]?.from);
      if (within.length > 0) {
        const measured: MeasuredMoisture = {
          moisturePercent: weightedMean(within),
          tests: within.map(({ number, testedOn }) => ({ number, testedOn })),
        };
        for (let index = start; index < end; index += 1) {
          filled[index] = {
            ...(placements[index] as Stay),
            moisturePercent: measured.moisturePercent,
            measured,
          };
        }
      }
    }
    start = end;
  }
  return filled;
}

/**
 * Tests made from one day (included) to another (not included): a stay's own. On the day of a move the seed is in its
 * new place.
 *
 * @param tests  in any order
 * @param from   first day
 * @param to     the day on which the stay ended; undefined while it goes on
 * @returns in order of date, then of number
 * Checked in tests/domain/moisture/stay-moisture.test.ts
 */
export function testsWithin<Test extends PacketMoistureTest>(
  tests: readonly Test[],
  from: CalendarDate,
  to: CalendarDate | undefined,
): Test[] {
  return tests
    .filter(({ testedOn }) => testedOn >= from && (to === undefined || testedOn < to))
    .sort((a, b) => a.testedOn.localeCompare(b.testedOn) || a.number.localeCompare(b.number));
}

/**
 * Mean of several results, each weighted by one over its variance.
 *
 * @param tests  at least one
 * @returns percent of fresh weight
 * @throws RangeError when there is none
 * Checked against R `weighted.mean`: tests/domain/moisture/stay-moisture.test.ts
 */
export function weightedMean(tests: readonly Pick<PacketMoistureTest, 'moisturePercent' | 'standardPoints'>[]): number {
  const first = tests[0];
  if (first === undefined) throw new RangeError('weightedMean: tests must not be empty');
  // Summed as distances from the first, so that the mean of one test is that test to the last digit.
  let distances = 0;
  let weights = 0;
  for (const { moisturePercent, standardPoints } of tests) {
    const weight = 1 / standardPoints ** 2;
    distances += weight * (moisturePercent - first.moisturePercent);
    weights += weight;
  }
  return first.moisturePercent + distances / weights;
}

const isUnwrittenSeal = ({ container, moisturePercent }: Placement) =>
  moisturePercent === null && isHermetic(container);

/** Index after the last stay in which the container of `start` stayed sealed, as far as was written. */
function endOfSeal(placements: readonly Placement[], start: number): number {
  const first = placements[start] as Placement;
  let end = start + 1;
  if (!isUnwrittenSeal(first)) return end;
  while (end < placements.length) {
    const next = placements[end] as Placement;
    const carried = next.container === first.container && next.storeId !== placements[end - 1]?.storeId;
    if (!carried || !isUnwrittenSeal(next)) break;
    end += 1;
  }
  return end;
}
