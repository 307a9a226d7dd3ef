/**
 * The picture of a lot's moisture through time: what each packet was reckoned at, what tests found, and the limits that
 * matter. Points only; the drawing reckons nothing.
 */
import { type CalendarDate, toEpochDay } from '../calendar/calendar-date';
import { isHermetic } from '../stock/containers';
import type { Placement } from '../stock/storage-history';
import type { MoistureSource } from './moisture-source';

export interface PacketStays {
  number: string;
  /** in the order they happened, with what tests tell filled in (stayMoistures) */
  placements: readonly Placement[];
}

/** A stay in a sealed container whose moisture is known. */
export interface SealedStretch {
  packet: string;
  fromDay: number;
  toDay: number;
  moisturePercent: number;
  source: Extract<MoistureSource['kind'], 'written' | 'measured'>;
}

export interface MoistureDot {
  number: string;
  day: number;
  moisturePercent: number;
  /** the method's standard deviation either way, never below 0 */
  lowerPercent: number;
  upperPercent: number;
}

export interface MoistureHistory {
  stretches: SealedStretch[];
  dots: MoistureDot[];
  fromDay: number;
  toDay: number;
}

/**
 * Points of the picture.
 *
 * @param packets  of the lot
 * @param tests    those that stand
 * @param today    where the picture ends
 * @returns days since 1970-01-01 and percent of fresh weight; null when there is nothing to draw
 * Checked in tests/domain/moisture/moisture-history.test.ts
 */
export function moistureHistory(
  packets: readonly PacketStays[],
  tests: readonly { number: string; testedOn: CalendarDate; moisturePercent: number; standardPoints: number }[],
  today: CalendarDate,
): MoistureHistory | null {
  const toDay = toEpochDay(today);
  const stretches = packets.flatMap(({ number, placements }) => {
    const begun = placements.filter(({ from }) => from <= today);
    return begun.flatMap(({ from, container, moisturePercent, measured }, index): SealedStretch[] => {
      if (moisturePercent === null || !isHermetic(container)) return [];
      const next = begun[index + 1];
      const stretch = { packet: number, fromDay: toEpochDay(from), toDay: next ? toEpochDay(next.from) : toDay };
      return [{ ...stretch, moisturePercent, source: measured ? 'measured' : 'written' }];
    });
  });
  const dots = tests.map(({ number, testedOn, moisturePercent, standardPoints }) => ({
    number,
    day: toEpochDay(testedOn),
    moisturePercent,
    lowerPercent: Math.max(0, moisturePercent - standardPoints),
    upperPercent: moisturePercent + standardPoints,
  }));
  const days = [...stretches.map(({ fromDay }) => fromDay), ...dots.map(({ day }) => day)];
  return days.length === 0 ? null : { stretches, dots, fromDay: Math.min(...days), toDay };
}
