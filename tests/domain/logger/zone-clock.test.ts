import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { fixedZone, isZone, zoneClock } from '@/lib/domain/logger/zone-clock';

const seconds = (text: string) => Date.parse(`${text}Z`) / 1000;
const at = (zone: string, wall: string) => {
  const found = zoneClock(zone).instantOf(seconds(wall));
  const iso = (instant: number) => new Date(instant * 1000).toISOString().slice(0, 19);
  if (found.kind === 'twice') return [iso(found.earlier), iso(found.later)];
  return found.kind === 'never' ? [] : [iso(found.instant)];
};

describe('a clock of a zone', () => {
  // EU rule: last Sundays of March and October at 01:00 UTC (Directive 2000/84/EC); USA: second Sunday of March, first
  // of November at 02:00 local time (Energy Policy Act of 2005).
  it('shows an hour of autumn twice', () => {
    expect(at('Europe/Paris', '2024-10-27T02:30:00')).toEqual(['2024-10-27T00:30:00', '2024-10-27T01:30:00']);
    expect(at('America/New_York', '2024-11-03T01:30:00')).toEqual(['2024-11-03T05:30:00', '2024-11-03T06:30:00']);
    expect(at('Europe/Paris', '2024-10-27T01:59:59')).toEqual(['2024-10-26T23:59:59']);
    expect(at('Europe/Paris', '2024-10-27T03:00:00')).toEqual(['2024-10-27T02:00:00']);
  });
  it('skips an hour of spring', () => {
    expect(at('Europe/Paris', '2024-03-31T02:00:00')).toEqual([]);
    expect(at('Europe/Paris', '2024-03-31T02:59:59')).toEqual([]);
    expect(at('Europe/Paris', '2024-03-31T01:59:59')).toEqual(['2024-03-31T00:59:59']);
    expect(at('Europe/Paris', '2024-03-31T03:00:00')).toEqual(['2024-03-31T01:00:00']);
  });
  it('knows half hours, and zones whose clock changes by half an hour', () => {
    expect(at('Asia/Kolkata', '2024-05-01T12:00:00')).toEqual(['2024-05-01T06:30:00']);
    // Lord Howe Island goes from +11:00 to +10:30 on 7 April 2024 at 02:00.
    expect(at('Australia/Lord_Howe', '2024-04-07T01:45:00')).toEqual(['2024-04-06T14:45:00', '2024-04-06T15:15:00']);
  });
  it('has no summer time in a fixed zone', () => {
    expect(at('UTC+01:00', '2024-03-31T02:30:00')).toEqual(['2024-03-31T01:30:00']);
    expect(at('UTC-03:30', '2024-07-01T00:00:00')).toEqual(['2024-07-01T03:30:00']);
    expect(at('UTC', '2024-07-01T00:00:00')).toEqual(['2024-07-01T00:00:00']);
  });
  it('is refused for what is no zone', () => {
    for (const name of ['', 'Nowhere/Land', 'UTC+1', '+01:00', 'file', 'Europe/Paris; x'])
      expect(isZone(name)).toBe(false);
    expect(() => zoneClock('Nowhere/Land')).toThrow(RangeError);
    expect(isZone('Europe/Lisbon') && isZone('UTC') && isZone('UTC-09:30')).toBe(true);
  });
  it('names a fixed offset so that its clock gives it back', () => {
    fc.assert(
      fc.property(fc.integer({ min: -14 * 4, max: 14 * 4 }), (quarters) => {
        const zone = fixedZone(quarters * 900);
        expect(zoneClock(zone).offsetOfDay(0)).toBe(quarters * 900 + 0);
      }),
    );
  });
  it('gives every instant back from what its clock showed', () => {
    const zones = ['Europe/Lisbon', 'America/St_Johns', 'Australia/Lord_Howe', 'Pacific/Auckland'];
    fc.assert(
      fc.property(
        fc.constantFrom(...zones),
        fc.integer({ min: seconds('2000-01-01T00:00:00'), max: seconds('2026-11-25T00:00:00') }),
        (zone, instant) => {
          const shown = new Intl.DateTimeFormat('sv-SE', { timeZone: zone, dateStyle: 'short', timeStyle: 'medium' })
            .format(instant * 1000)
            .replace(' ', 'T');
          const found = zoneClock(zone).instantOf(seconds(shown));
          const instants =
            found.kind === 'once' ? [found.instant] : found.kind === 'twice' ? [found.earlier, found.later] : [];
          expect(instants).toContain(instant);
        },
      ),
      { numRuns: 300 },
    );
  });
});
