/**
 * What a clock on the wall shows, to the instant it showed it. A clock that is put forward and back skips an hour in
 * spring and shows one twice in autumn: both are said, not guessed away.
 */

const FIXED = /^UTC(?:([+-])(\d{2}):(\d{2}))?$/;
const SECONDS_PER_DAY = 86_400;
/** Since 1972 every zone has changed its clock at a quarter of an hour of UTC. */
const QUARTER_HOUR = 900;

export type WallInstant =
  | { kind: 'once'; instant: number }
  /** shown twice: before the clock was put back, and after */
  | { kind: 'twice'; earlier: number; later: number }
  /** never shown: the clock was put forward over it */
  | { kind: 'never' };

export interface ZoneClock {
  /** seconds that are the same all through this wall day, or null when the clock changes about it */
  offsetOfDay(wallDay: number): number | null;
  instantOf(wallSeconds: number): WallInstant;
}

/**
 * Whether a text names a zone.
 *
 * @param zone  'UTC', 'UTC+01:00' (no summer time), or an IANA name
 * Checked in tests/domain/logger/zone-clock.test.ts
 */
export function isZone(zone: string): boolean {
  if (FIXED.test(zone)) return true;
  // '+01:00' is a zone to Intl as well, but not a name that people choose.
  if (!/^[A-Za-z]+(?:[/_+-][A-Za-z0-9]+)+$/.test(zone)) return false;
  try {
    new Intl.DateTimeFormat('en-GB', { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}

/** 'UTC+01:00' for 3600 seconds east. Checked in tests/domain/logger/zone-clock.test.ts */
export function fixedZone(offsetSeconds: number): string {
  if (offsetSeconds === 0) return 'UTC';
  const minutes = Math.abs(offsetSeconds) / 60;
  const two = (value: number) => String(value).padStart(2, '0');
  return `UTC${offsetSeconds < 0 ? '-' : '+'}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/**
 * A clock of a zone.
 *
 * @param zone  as `isZone` accepts
 * @returns instants as seconds since 1970-01-01T00:00Z for seconds of the wall clock reckoned the same way
 * @throws RangeError when it is no zone
 * @see the rules of each zone come from the IANA data that Node carries (Intl.DateTimeFormat)
 * Checked in tests/domain/logger/zone-clock.test.ts
 */
export function zoneClock(zone: string): ZoneClock {
  const fixed = FIXED.exec(zone);
  if (fixed) {
    const offset = (fixed[1] === '-' ? -1 : 1) * (Number(fixed[2] ?? 0) * 3600 + Number(fixed[3] ?? 0) * 60);
    return { offsetOfDay: () => offset, instantOf: (wall) => ({ kind: 'once', instant: wall - offset }) };
  }
  if (!isZone(zone)) throw new RangeError(`zoneClock: zone must be UTC, UTC+hh:mm or an IANA name, got ${zone}`);
  return namedClock(zone);
}

function namedClock(zone: string): ZoneClock {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    second: 'numeric',
  });
  const offsets = new Map<number, number>();
  const days = new Map<number, number | null>();

  function offsetAt(instant: number): number {
    const quarter = Math.floor(instant / QUARTER_HOUR);
    let offset = offsets.get(quarter);
    if (offset === undefined) {
      const part: Record<string, number> = {};
      for (const { type, value } of format.formatToParts(quarter * QUARTER_HOUR * 1000)) part[type] = Number(value);
      const { year = 0, month = 1, day = 1, hour = 0, minute = 0, second = 0 } = part;
      offset = Date.UTC(year, month - 1, day, hour, minute, second) / 1000 - quarter * QUARTER_HOUR;
      offsets.set(quarter, offset);
    }
    return offset;
  }

  function offsetOfDay(wallDay: number): number | null {
    let offset = days.get(wallDay);
    if (offset === undefined) {
      const before = offsetAt((wallDay - 1) * SECONDS_PER_DAY);
      offset = before === offsetAt((wallDay + 2) * SECONDS_PER_DAY) ? before : null;
      days.set(wallDay, offset);
    }
    return offset;
  }

  function instantOf(wall: number): WallInstant {
    const known = offsetOfDay(Math.floor(wall / SECONDS_PER_DAY));
    if (known !== null) return { kind: 'once', instant: wall - known };
    const before = wall - offsetAt(wall - SECONDS_PER_DAY);
    const after = wall - offsetAt(wall + SECONDS_PER_DAY);
    const shows = (instant: number) => instant + offsetAt(instant) === wall;
    if (before === after) return { kind: 'once', instant: before };
    if (shows(before) && shows(after)) {
      return { kind: 'twice', earlier: Math.min(before, after), later: Math.max(before, after) };
    }
    if (shows(before)) return { kind: 'once', instant: before };
    return shows(after) ? { kind: 'once', instant: after } : { kind: 'never' };
  }
  return { offsetOfDay, instantOf };
}
