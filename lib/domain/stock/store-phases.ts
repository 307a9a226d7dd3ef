/**
 * Where a store stood and how it was set, through time. Stores nest and are moved: a box that went from the fridge into
 * the freezer on a day had the fridge's climate until then. A store that was logged has its own readings; before
 * them, after them and without them those of the nearest logged store around it hold; and where nothing was logged the
 * target stands in, its own or, for a store that has none, that of the store around it.
 */

/** What a store is meant to be: degrees C, and relative humidity 0-1 or null where nobody minds. */
export interface StoreTargets {
  temperatureC: number;
  relativeHumidity: number | null;
}

/** From this day the store stood in `parentId` and was set to `target`; null: as the store around it. */
export interface StorePhase {
  storeId: string;
  /** days since 1970-01-01; -Infinity for the first */
  fromDay: number;
  parentId: string | null;
  target: StoreTargets | null;
}

/** From the day of a store's first reading to the day after its last: days since 1970-01-01. */
export interface LoggedDays {
  fromDay: number;
  toDay: number;
}

/**
 * A store's own logger is believed for so many days after its last reading, before that of the store around it takes
 * over: files are brought in by hand, some later than others. Our own choice.
 */
const SILENT_AFTER_DAYS = 60;

/** A stretch of days through which one climate held in a store. */
export interface ClimateStretch {
  /** included; may be -Infinity */
  fromDay: number;
  /** not included; may be Infinity */
  toDay: number;
  /** whose readings hold; null where none were taken */
  loggedStoreId: string | null;
  /** whose target stands in for missing readings */
  targetStoreId: string;
  target: StoreTargets;
}

export type StoreTimeline =
  | { ok: true; stretches: ClimateStretch[] }
  /** 'inside-itself': on some day the store would lie in itself; 'no-target': an outermost store has none */
  | { ok: false; reason: 'inside-itself' | 'no-target' };

/**
 * The climates of a store through all time, contiguous and in order.
 *
 * @param storeId    the store
 * @param phasesOf   the phases of any store, in the order they were written; of two from the same day the later holds
 * @param loggedDays the days of a store's own readings; null where it has none
 * @returns stretches from -Infinity to Infinity, neighbours that do not differ put together; or why there are none
 * @throws RangeError when a store has no phases
 * Checked in tests/domain/stock/store-phases.test.ts
 */
export function storeTimeline(
  storeId: string,
  phasesOf: (storeId: string) => readonly StorePhase[],
  loggedDays: (storeId: string) => LoggedDays | null,
): StoreTimeline {
  const found = stretchesBetween(storeId, -Infinity, Infinity, []);
  if (typeof found === 'string') return { ok: false, reason: found };
  return { ok: true, stretches: joined(found) };

  function stretchesBetween(
    id: string,
    fromDay: number,
    toDay: number,
    inner: readonly string[],
  ): ClimateStretch[] | 'inside-itself' | 'no-target' {
    if (inner.includes(id)) return 'inside-itself';
    const all: ClimateStretch[] = [];
    for (const phase of phasesBetween(phasesOf(id), fromDay, toDay)) {
      const around =
        phase.parentId === null ? null : stretchesBetween(phase.parentId, phase.fromDay, phase.toDay, [...inner, id]);
      if (typeof around === 'string') return around;
      if (around === null) {
        if (phase.target === null) return 'no-target';
        all.push({
          ...days(phase),
          loggedStoreId: loggedDays(id) ? id : null,
          targetStoreId: id,
          target: phase.target,
        });
        continue;
      }
      for (const stretch of around) {
        const own = phase.target === null ? {} : { targetStoreId: id, target: phase.target };
        for (const part of loggersOf(id, stretch)) all.push({ ...part, ...own });
      }
    }
    return all;
  }

  /** A stretch of the store around it, cut where this store's own logger begins and where it falls silent. */
  function loggersOf(id: string, stretch: ClimateStretch): ClimateStretch[] {
    const own = loggedDays(id);
    if (!own) return [stretch];
    const around = stretch.loggedStoreId === null ? null : loggedDays(stretch.loggedStoreId);
    if (!around) return [{ ...stretch, loggedStoreId: id }];
    const isSilent = around.toDay > own.toDay + SILENT_AFTER_DAYS;
    const [begins, ends] = [own.fromDay, isSilent ? own.toDay : Infinity];
    return [
      { ...stretch, toDay: Math.min(stretch.toDay, begins) },
      {
        ...stretch,
        fromDay: Math.max(stretch.fromDay, begins),
        toDay: Math.min(stretch.toDay, ends),
        loggedStoreId: id,
      },
      { ...stretch, fromDay: Math.max(stretch.fromDay, ends) },
    ].filter(({ fromDay, toDay }) => fromDay < toDay);
  }
}

const days = ({ fromDay, toDay }: { fromDay: number; toDay: number }) => ({ fromDay, toDay });

/**
 * The phases of a store that hold somewhere between two days, each with its end, cut to these days.
 *
 * @param phases   in the order they were written; of two from the same day the later holds; at least one
 * @param fromDay  days since 1970-01-01, or -Infinity
 * @param toDay    the same, not included, or Infinity
 * @returns contiguous, in order
 * @throws RangeError when there is no phase
 * Checked through `storeTimeline` in tests/domain/stock/store-phases.test.ts
 */
export function phasesBetween(phases: readonly StorePhase[], fromDay: number, toDay: number) {
  if (phases.length === 0) throw new RangeError('storeTimeline: a store has no phases');
  const held = new Map(phases.map((phase) => [phase.fromDay, phase]));
  const ordered = [...held.values()].sort((a, b) => a.fromDay - b.fromDay);
  return ordered.flatMap((phase, index) => {
    const begins = index === 0 ? fromDay : Math.max(fromDay, phase.fromDay);
    const ends = Math.min(toDay, ordered[index + 1]?.fromDay ?? Infinity);
    return begins < ends ? [{ ...phase, fromDay: begins, toDay: ends }] : [];
  });
}

function joined(stretches: readonly ClimateStretch[]): ClimateStretch[] {
  const kept: ClimateStretch[] = [];
  for (const stretch of stretches) {
    const last = kept.at(-1);
    if (last && isSame(last, stretch)) last.toDay = stretch.toDay;
    else kept.push({ ...stretch });
  }
  return kept;
}

const isSame = (a: ClimateStretch, b: ClimateStretch) =>
  a.loggedStoreId === b.loggedStoreId &&
  a.targetStoreId === b.targetStoreId &&
  a.target.temperatureC === b.target.temperatureC &&
  a.target.relativeHumidity === b.target.relativeHumidity;
