import { describe, expect, it } from 'vitest';
import { askedStorage } from '@/app/(bank)/reference/storage-life/_parts/asked-storage';
import { atMost, percentOf } from '@/app/(bank)/reference/storage-life/_parts/words';
import { storageLife } from '@/lib/domain/longevity/storage-life';
import { seedOf } from '../../domain/longevity/seed-kinds';

const onion = seedOf({ KE: 6.975, CW: 3.47, CH: 0.04, CQ: 0.000428 }, { oil: 0.23 });
const input = { crop: 'onion', moisture: 8, temperature: 5, initial: 0.95, wanted: 0.85, years: 10 };
const laidBefore = (beforeYears: number) => ({ ...input, beforeYears, beforeMoisture: 8, beforeTemperature: 5 });

describe('the storage that was asked about', () => {
  it('is in days and proportions', () => {
    expect(askedStorage(input, onion)).toEqual({
      ok: true,
      condition: { moisturePercent: 8, temperatureC: 5 },
      goal: { initialViability: 0.95, wantedViability: 0.85, days: 3652.5 },
      before: null,
    });
  });

  it('begins where an earlier stay left off: the same store before shortens what is left by just that stay', () => {
    const whole = storageLife(
      onion,
      { moisturePercent: 8, temperatureC: 5 },
      { initialViability: 0.95, wantedViability: 0.85 },
    );
    const asked = askedStorage(laidBefore(2), onion);
    if (!asked.ok || !whole.ok) throw new Error('an answer was expected');
    const left = storageLife(onion, asked.condition, asked.goal);
    expect(left.ok && Math.abs(left.days + 2 * 365.25 - whole.days)).toBeLessThan(1e-6);
  });

  it('has no answer where the earlier stay has none, or leaves too little', () => {
    expect(askedStorage(laidBefore(200), onion)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('before it comes'),
    });
    expect(askedStorage({ ...laidBefore(1), beforeMoisture: 17 }, onion)).toMatchObject({
      ok: false,
      reason: expect.stringContaining('17 %'),
    });
  });

  it('has none for seed that dies when dried', () => {
    expect(askedStorage(input, { ...onion, storageBehaviour: 'recalcitrant' })).toMatchObject({ ok: false });
  });
});

describe('figures on the page', () => {
  it('never call all or nothing what is nearly so', () => {
    expect([0.99999, 0.95, 0.123456, 0.0001, 0].map(percentOf)).toEqual([
      '99.9\u00a0%',
      '95\u00a0%',
      '12.3\u00a0%',
      'under 0.1\u00a0%',
      'under 0.1\u00a0%',
    ]);
  });

  it('are rounded to the safe side where they are a limit', () => {
    expect([7.19, 7.1, -9.21, 0.3].map(atMost)).toEqual([7.1, 7.1, -9.3, 0.3]);
  });
});
