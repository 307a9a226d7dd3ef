import { describe, expect, test } from 'vitest';
import { fitLot, probabilityBelow, viabilityAt } from '../../../lib/domain/longevity/lot-model';
import { judgeLot } from '../../../lib/domain/regrow/judge-lot';
import { lastSafeSeason } from '../../../lib/domain/regrow/last-safe-season';
import type { LotToJudge } from '../../../lib/domain/regrow/lot-judgement';
import { seedsToSowUncertain } from '../../../lib/domain/regrow/seeds-to-sow';
import { STANDARD_THRESHOLD } from '../../../lib/domain/regrow/threshold';

const prior = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };

/** A good lot: tested two years ago at 94 %, ageing one probit in some 14 years. */
const goodLot: LotToJudge = {
  today: '2026-11-25',
  posterior: fitLot({ tests: [{ probitsLost: 0.05, germinated: 188, sown: 200 }], prior }),
  probitsLostNow: 0.2,
  probitsPerDay: 0.0002,
  thresholdRule: STANDARD_THRESHOLD,
  seedsLeft: 2000,
  plantsNeeded: 40,
  emergence: 0.8,
  sowingMonth: 4,
  receivedOn: '2024-09-01',
  lastTestedOn: '2024-11-25',
  probitsLostAtLastTest: 0.05,
  isOnlyLot: false,
  hasSafetyDuplicate: true,
};

describe('judgeLot', () => {
  test('reports the same figures as the modules it combines', () => {
    const judged = judgeLot(goodLot);
    const { posterior } = goodLot;
    const initial = viabilityAt(posterior, { probitsLost: 0 }).median;
    expect(judged.threshold).toBeCloseTo(0.85 * initial, 12);
    expect(judged.viabilityNow).toEqual({ ...viabilityAt(posterior, { probitsLost: 0.2, level: 0.9 }), level: 0.9 });
    const threshold = judged.threshold as number;
    expect(judged.chanceBelowNow).toBe(probabilityBelow(posterior, { probitsLost: 0.2, threshold }));
    // 2027-04-01 is 127 days ahead.
    const probitsLost = 0.2 + 127 * 0.0002;
    expect(judged.chanceBelowBySeason[0]).toEqual({
      season: 2027,
      chance: probabilityBelow(posterior, { probitsLost, threshold }),
    });
    expect(judged.seedsNeeded).toBe(seedsToSowUncertain({ plants: 40, posterior, probitsLost, emergence: 0.8 }));
    expect(judged.lastSafeSeason).toBe(lastSafeSeason(goodLot, 4));
  });

  test('leaves a good lot alone, with the chance of being below growing season by season', () => {
    const judged = judgeLot(goodLot);
    expect(judged).toMatchObject({ action: 'leave', rescue: false, nextSeason: 2027, forecastRefusal: null });
    expect(judged.chanceBelowBySeason.map(({ season }) => season)).toEqual([2027, 2028, 2029, 2030, 2031]);
    const chances = judged.chanceBelowBySeason.map(({ chance }) => chance);
    expect(chances).toEqual([...chances].sort((a, b) => a - b));
    expect(judged.chanceOfRaisingNextSeason).toBeGreaterThan(0.99);
    expect(judged.testDue.dueOn > goodLot.today).toBe(true);
  });

  test('regrows the same lot once it has aged past the line', () => {
    const judged = judgeLot({ ...goodLot, probitsLostNow: 1.5, isOnlyLot: true });
    expect(judged).toMatchObject({
      action: 'regrow',
      rescue: false,
      sentence: 'Already below the line more likely than not; only lot of its accession.',
    });
    expect(judged.chanceBelowNow).toBeGreaterThan(0.5);
  });

  test('rescues a dying lot with little seed, before any other', () => {
    const dying = judgeLot({ ...goodLot, probitsLostNow: 3, seedsLeft: 200 });
    expect(dying).toMatchObject({ action: 'regrow', rescue: true, lastSafeSeason: 'past' });
    expect(dying.urgency).toBeGreaterThan(judgeLot({ ...goodLot, probitsLostNow: 1.5 }).urgency);
  });

  test('counts a lot that was never tested before anything else', () => {
    const untested = { ...goodLot, posterior: fitLot({ tests: [], prior }), lastTestedOn: null };
    const judged = judgeLot(untested);
    expect(judged.testDue.rule).toBe('never-tested');
    expect(judged).toMatchObject({ action: 'test-first' });
    expect(judged.sentence).toMatch(/^Never tested/);
  });

  test('tests again on the day on which the chance of being below passes 10 %, when that comes first', () => {
    // Borrowed constants leave the rate so uncertain that a third of the median time is too late.
    const borrowed = { initial: prior.initial, logRate: { mean: 0.3, sd: 1.5 } };
    const posterior = fitLot({ tests: [{ probitsLost: 0.01, germinated: 190, sown: 200 }], prior: borrowed });
    const lot = {
      ...goodLot,
      posterior,
      probitsLostNow: 0.01,
      probitsLostAtLastTest: 0.01,
      lastTestedOn: goodLot.today,
    };
    const judged = judgeLot(lot);
    expect(judged.testDue.rule).toBe('chance-of-being-below');
    const daysAhead = (Date.parse(judged.testDue.dueOn) - Date.parse(goodLot.today)) / 86_400_000;
    expect(daysAhead).toBeGreaterThan(30);
    const threshold = judged.threshold as number;
    const chance = probabilityBelow(posterior, { probitsLost: 0.01 + 0.0002 * daysAhead, threshold });
    expect(Math.abs(chance - 0.1)).toBeLessThan(0.001);
  });

  test('tests again after a third of the median time otherwise', () => {
    const judged = judgeLot({ ...goodLot, lastTestedOn: goodLot.today, probitsLostAtLastTest: 0.2 });
    expect(judged.testDue.rule).toBe('third-of-time');
    const daysAhead = (Date.parse(judged.testDue.dueOn) - Date.parse(goodLot.today)) / 86_400_000;
    const threshold = judged.threshold as number;
    const atThreshold = probabilityBelow(goodLot.posterior, { probitsLost: 0.2 + 3 * daysAhead * 0.0002, threshold });
    expect(Math.abs(atThreshold - 0.5)).toBeLessThan(0.005);
  });

  test('a store that does not age the seed: tested after 40 years, safe beyond the horizon', () => {
    const frozen = judgeLot({ ...goodLot, probitsPerDay: 0, probitsLostNow: 0.05 });
    expect(frozen).toMatchObject({ action: 'leave', lastSafeSeason: 'beyond horizon' });
    expect(frozen.testDue).toMatchObject({ rule: 'cap', dueOn: '2064-11-25' });
  });

  test('gives no figure where no forecast holds, and says why', () => {
    const refused = { ...goodLot, forecastRefusal: { reason: 'this seed does not survive drying' } };
    expect(judgeLot(refused)).toMatchObject({
      viabilityNow: null,
      threshold: null,
      chanceBelowNow: null,
      chanceBelowBySeason: [],
      seedsNeeded: null,
      lastSafeSeason: null,
      rescue: false,
      action: 'leave',
      forecastRefusal: 'this seed does not survive drying',
      sentence: 'No forecast: this seed does not survive drying; next test due 2029-11-25.',
    });
    const due = judgeLot({ ...refused, lastTestedOn: '2019-11-25' });
    expect(due).toMatchObject({ action: 'test-first' });
    expect(due.sentence).toContain('a test has been due since 2024-11-25');
  });

  test('an empty lot has no urgency', () => {
    expect(judgeLot({ ...goodLot, seedsLeft: 0 })).toMatchObject({
      action: 'leave',
      urgency: 0,
      sentence: 'No seed left.',
    });
    const refused = { ...goodLot, seedsLeft: 0, lastTestedOn: null, forecastRefusal: { reason: 'too moist' } };
    expect(judgeLot(refused)).toMatchObject({ action: 'leave', urgency: 0 });
  });

  test('hopeless lots come out as numbers or words, never as NaN', () => {
    const dead = judgeLot({
      ...goodLot,
      posterior: fitLot({ tests: [{ probitsLost: 0.5, germinated: 0, sown: 400 }], prior }),
      probitsLostNow: 30,
    });
    expect(dead.seedsNeeded).toBe(Number.POSITIVE_INFINITY);
    expect(dead).toMatchObject({ rescue: true, action: 'regrow' });
    expect(dead.sentence).toContain('may be dead');
    expect(Number.isFinite(dead.urgency)).toBe(true);
    expect(dead.chanceBelowNow).toBeGreaterThan(0.99);
  });
});
