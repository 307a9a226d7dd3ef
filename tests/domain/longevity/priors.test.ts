import { describe, expect, it } from 'vitest';
import { chooseLotPrior } from '../../../lib/domain/longevity/priors';

describe('chooseLotPrior', () => {
  it('trusts constants of the crop itself inside their range', () => {
    expect(chooseLotPrior({ borrowed: false, outsideFittedRange: false })).toEqual({
      initial: { mean: 1.75, sd: 0.75 },
      logRate: { mean: 0, sd: 0.5 },
      reason: expect.stringContaining('fitted to this crop'),
    });
  });

  it.each([
    [{ borrowed: true, outsideFittedRange: false }, 'borrowed'],
    [{ borrowed: false, outsideFittedRange: true }, 'outside the conditions'],
    [{ borrowed: false, outsideFittedRange: false, moistureAssumed: true }, 'assumed, not measured'],
    [{ borrowed: true, outsideFittedRange: true, moistureAssumed: true }, 'assumed, not measured'],
  ])('believes in a faster and less certain rate when in doubt, and says why: %j', (question, why) => {
    const prior = chooseLotPrior(question);
    expect(prior.logRate).toEqual({ mean: 0.3, sd: 0.9 });
    expect(prior.reason).toContain(why);
  });

  it("lets the bank's own belief for the crop win, part by part", () => {
    const prior = chooseLotPrior({
      borrowed: true,
      outsideFittedRange: true,
      cropOverride: { initial: { mean: 1, sd: 1 } },
    });
    expect(prior.initial).toEqual({ mean: 1, sd: 1 });
    expect(prior.logRate).toEqual({ mean: 0.3, sd: 0.9 });
    const rate = chooseLotPrior({
      borrowed: true,
      outsideFittedRange: true,
      cropOverride: { logRate: { mean: -0.2, sd: 0.3 } },
    });
    expect(rate).toMatchObject({ initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: -0.2, sd: 0.3 } });
    expect(rate.reason).toContain("bank's own");
  });

  it('refuses an override without spread', () => {
    expect(() =>
      chooseLotPrior({ borrowed: false, outsideFittedRange: false, cropOverride: { logRate: { mean: 0, sd: 0 } } }),
    ).toThrow(/logRate.sd/);
  });
});
