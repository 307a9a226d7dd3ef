import { describe, expect, it } from 'vitest';
import { effectiveConditions, freezingWarning } from '../../../lib/domain/longevity/equation-limits';

const barleyRange = {
  moistureFromPercent: 5.5,
  moistureToPercent: 24.6,
  temperatureFromC: 3,
  temperatureToC: 90,
  lowMoistureLimitPercent: 4,
};

describe('effectiveConditions', () => {
  it('passes conditions inside the fitted range through, with nothing to note', () => {
    expect(effectiveConditions({ constantsRange: barleyRange, moisturePercent: 8, temperatureC: 20 })).toEqual({
      ok: true,
      moisturePercent: 8,
      temperatureC: 20,
      heldAtLowLimit: false,
      outsideFittedRange: false,
      notes: [],
    });
  });

  it('holds moisture at the low limit, and says so', () => {
    const below = effectiveConditions({ constantsRange: barleyRange, moisturePercent: 3.9, temperatureC: 20 });
    expect(below).toMatchObject({ ok: true, moisturePercent: 4, heldAtLowLimit: true });
    expect(below.ok && below.notes[0]).toBe('Drying below 4 % no longer lengthens life: reckoned at 4 %.');
    const at = effectiveConditions({ constantsRange: barleyRange, moisturePercent: 4, temperatureC: 20 });
    expect(at).toMatchObject({ ok: true, moisturePercent: 4, heldAtLowLimit: false });
  });

  it('gives no forecast above 15 % moisture, even where the fitted range goes further', () => {
    expect(effectiveConditions({ constantsRange: barleyRange, moisturePercent: 15, temperatureC: 20 }).ok).toBe(true);
    const above = effectiveConditions({ constantsRange: barleyRange, moisturePercent: 15.01, temperatureC: 20 });
    expect(above).toMatchObject({ ok: false });
    expect(!above.ok && above.reason).toContain('does not hold');
  });

  it('gives no forecast for recalcitrant seed at any moisture', () => {
    const answer = effectiveConditions({
      constantsRange: barleyRange,
      storageBehaviour: 'recalcitrant',
      moisturePercent: 8,
      temperatureC: 20,
    });
    expect(answer).toEqual({ ok: false, reason: expect.stringContaining('dies when dried') });
  });

  it('warns about intermediate seed but still answers', () => {
    const answer = effectiveConditions({
      constantsRange: barleyRange,
      storageBehaviour: 'intermediate',
      moisturePercent: 8,
      temperatureC: 20,
    });
    expect(answer).toMatchObject({ ok: true, outsideFittedRange: false, notes: [expect.stringContaining('in part')] });
  });

  it.each([
    { moisturePercent: 5.5, temperatureC: 3, outside: false },
    { moisturePercent: 5.4, temperatureC: 3, outside: true },
    { moisturePercent: 5.5, temperatureC: 2.9, outside: true },
    { moisturePercent: 8, temperatureC: 90, outside: false },
    { moisturePercent: 8, temperatureC: 90.1, outside: true },
  ])('calls $moisturePercent % at $temperatureC C outside the fitted range: $outside', (row) => {
    const answer = effectiveConditions({ constantsRange: barleyRange, ...row });
    expect(answer).toMatchObject({ ok: true, outsideFittedRange: row.outside });
    expect(answer.ok && answer.notes.length > 0).toBe(row.outside);
  });

  it('treats a range that is not known as outside, and says so', () => {
    const answer = effectiveConditions({ constantsRange: {}, moisturePercent: 8, temperatureC: 5 });
    expect(answer).toMatchObject({ ok: true, outsideFittedRange: true });
    expect(answer.ok && answer.notes).toHaveLength(2);
  });

  it.each([0, 100, Number.NaN])('refuses a moisture of %s percent', (moisturePercent) => {
    expect(() => effectiveConditions({ constantsRange: {}, moisturePercent, temperatureC: 5 })).toThrow(RangeError);
  });
});

describe('freezingWarning', () => {
  it('warns above 14 % below freezing, and only there', () => {
    expect(freezingWarning({ moisturePercent: 14, temperatureC: -18 })).toBeNull();
    expect(freezingWarning({ moisturePercent: 14.1, temperatureC: 0 })).toBeNull();
    expect(freezingWarning({ moisturePercent: 14.1, temperatureC: -0.1 })).toContain('14.1 %');
  });

  it('refuses a temperature that cannot be', () => {
    expect(() => freezingWarning({ moisturePercent: 8, temperatureC: -300 })).toThrow(RangeError);
  });
});
