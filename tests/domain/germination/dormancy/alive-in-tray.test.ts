import { describe, expect, test } from 'vitest';
import { aliveInTray } from '@/lib/domain/germination/dormancy/alive-in-tray';
import { aliveWithSideSamples } from '@/lib/domain/germination/dormancy/side-samples';
import { binomialInterval } from '@/lib/domain/statistics/binomial-interval';

const tray = { seeds: 200, normal: 120, abnormal: 10, hardOrFresh: 50, looked: 20, alive: 15 };

describe('alive share of a tray whose left-over seed was looked at', () => {
  test('carries what the look found over to hard and fresh seed that nobody looked at', () => {
    const found = aliveInTray(tray);
    // 120 normal, and 15 of 20 of the 50 left: 37.5 more
    expect(found).toMatchObject({ ok: true, proportion: 157.5 / 200, carriedOver: 30 / 200 });
    // Hard and fresh as one kind: the same as a side sample of either alone, which is checked against R.
    const nothing = { seeds: 0, looked: 0, alive: 0 };
    const left = { seeds: 50, looked: 20, alive: 15 };
    expect(found).toEqual(aliveWithSideSamples({ seeds: 200, normal: 120, hard: left, fresh: nothing }));
  });

  test('is a plain share with a Wilson interval when all of them were looked at', () => {
    const found = aliveInTray({ ...tray, looked: 50, alive: 40 });
    const wilson = binomialInterval({ successes: 160, trials: 200 });
    expect(found).toMatchObject({ ok: true, proportion: 0.8, carriedOver: 0 });
    if (!found.ok) throw new Error('refused');
    expect(found.lower).toBeCloseTo(wilson.lower, 12);
    expect(found.upper).toBeCloseTo(wilson.upper, 12);
  });

  test('carries nothing over when more was looked at than is classed hard or fresh: the look decided the classes', () => {
    const found = aliveInTray({ ...tray, hardOrFresh: 15, looked: 20, alive: 15 });
    expect(found).toMatchObject({ ok: true, proportion: 135 / 200, carriedOver: 0 });
  });

  test('has no figure while nobody looked, but its two extremes', () => {
    expect(aliveInTray({ ...tray, looked: 0, alive: 0 })).toMatchObject({ ok: false, between: [0.6, 0.85] });
  });

  test('counts that cannot be are refused: seedlings were looked at, or more alive than looked at', () => {
    expect(() => aliveInTray({ ...tray, looked: 70, alive: 15 })).not.toThrow();
    expect(() => aliveInTray({ ...tray, looked: 71, alive: 15 })).toThrow(RangeError);
    expect(() => aliveInTray({ ...tray, alive: 21 })).toThrow(RangeError);
    expect(() => aliveInTray({ ...tray, abnormal: -1 })).toThrow(RangeError);
  });
});
