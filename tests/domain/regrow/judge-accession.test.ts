import { describe, expect, test } from 'vitest';
import { byUrgency, type JudgedLot, judgeAccession } from '../../../lib/domain/regrow/judge-accession';
import type { LotJudgement } from '../../../lib/domain/regrow/lot-judgement';

const good: LotJudgement = {
  viabilityNow: { median: 0.93, lower: 0.88, upper: 0.97, level: 0.9 },
  threshold: 0.8,
  chanceBelowNow: 0.01,
  chanceBelowBySeason: [{ season: 2027, chance: 0.02 }],
  nextSeason: 2027,
  seedsNeeded: 70,
  chanceOfRaisingNextSeason: 1,
  testDue: { dueOn: '2031-04-05', rule: 'third-of-time', sentence: '' },
  lastSafeSeason: 2045,
  rescue: false,
  action: 'leave',
  urgency: 3,
  reasons: ['Can wait.'],
  sentence: 'Can wait.',
  forecastRefusal: null,
};
const failing: LotJudgement = {
  ...good,
  chanceBelowNow: 0.6,
  action: 'regrow',
  urgency: 240,
  sentence: 'Already below the line.',
};
const dying: LotJudgement = {
  ...failing,
  lastSafeSeason: 'past',
  rescue: true,
  chanceOfRaisingNextSeason: 0.3,
  urgency: 380,
  sentence: 'Rescue.',
};
const unforecast: LotJudgement = {
  ...good,
  urgency: 0,
  forecastRefusal: 'too moist',
  chanceBelowNow: null,
  chanceOfRaisingNextSeason: null,
  lastSafeSeason: null,
};

const lot = (lotNumber: string, judgement: LotJudgement, change: Partial<JudgedLot> = {}): JudgedLot => ({
  lotNumber,
  judgement,
  seedsLeft: 500,
  generation: 1,
  isolation: 'bagged flowers',
  ...change,
});

describe('the need of an accession is that of the lot that carries it', () => {
  test('a good young lot beside a dying old one is no emergency, but the dying one is told', () => {
    expect(judgeAccession([lot('L-1', dying, { generation: 0 }), lot('L-2', good)], 'insect')).toEqual({
      action: 'leave',
      season: 2045,
      keyLotNumber: 'L-2',
      sowFromLotNumber: 'L-2',
      urgency: 3,
      sentence: 'L-2: Can wait. L-1 is past its last safe season.',
    });
  });

  test('a lone lot speaks for itself', () => {
    expect(judgeAccession([lot('L-1', failing)], 'insect')).toMatchObject({
      action: 'regrow',
      season: 2027,
      urgency: 240,
      sentence: 'Already below the line.',
    });
  });

  test('an open-pollinated lot of a crossing crop does not carry the variety, that of a selfing crop does', () => {
    const lots = [lot('L-1', dying), lot('L-2', good, { isolation: 'none' })];
    expect(judgeAccession(lots, 'insect')).toMatchObject({ keyLotNumber: 'L-1', action: 'regrow', urgency: 380 });
    expect(judgeAccession(lots, 'self')).toMatchObject({ keyLotNumber: 'L-2', action: 'leave' });
  });

  test('open-pollinated seed carries it when there is no other, and that is said', () => {
    const judged = judgeAccession([lot('L-1', good, { isolation: 'none' })], 'wind');
    expect(judged.keyLotNumber).toBe('L-1');
    expect(judged.sentence).toBe('Can wait. None of its lots was isolated: its seed may have crossed.');
  });

  test('a lot without forecast is no safety for one that is failing', () => {
    expect(judgeAccession([lot('L-1', failing), lot('L-2', unforecast)], 'insect').keyLotNumber).toBe('L-1');
    expect(judgeAccession([lot('L-2', unforecast)], 'insect')).toMatchObject({ keyLotNumber: 'L-2', season: null });
  });

  test('empty lots do not count; nothing left is said', () => {
    expect(judgeAccession([lot('L-1', good, { seedsLeft: 0 }), lot('L-2', dying)], 'insect').keyLotNumber).toBe('L-2');
    expect(judgeAccession([lot('L-1', good, { seedsLeft: 0 })], 'insect')).toMatchObject({
      action: 'leave',
      keyLotNumber: null,
      urgency: 0,
      sentence: 'No seed left in any lot.',
    });
    expect(judgeAccession([], 'insect').sentence).toBe('No lot yet.');
  });

  test('names two failing lots and counts the rest', () => {
    const lots = [lot('L-9', good), ...['L-1', 'L-2', 'L-3', 'L-4'].map((number) => lot(number, failing))];
    expect(judgeAccession(lots, 'insect').sentence).toBe(
      'L-9: Can wait. L-1 is below the line more likely than not. L-2 is below the line more likely than not. 2 more of its lots are failing too.',
    );
  });
});

describe('the lot to sow from', () => {
  const sowFrom = (lots: JudgedLot[]) => judgeAccession(lots, 'insect').sowFromLotNumber;

  test('is the one closest to the original that can still do it', () => {
    expect(
      sowFrom([lot('L-0', failing, { generation: 0 }), lot('L-1', good), lot('L-2', good, { generation: 2 })]),
    ).toBe('L-0');
    expect(sowFrom([lot('L-0', dying, { generation: 0 }), lot('L-1', good), lot('L-2', good, { generation: 2 })])).toBe(
      'L-1',
    );
  });

  test('is isolated, not open-pollinated, though the open-pollinated one is older', () => {
    expect(sowFrom([lot('L-0', good, { generation: 0, isolation: 'none' }), lot('L-1', good)])).toBe('L-1');
  });

  test('among equals is the better isolated, then the more certain, then the first by number', () => {
    expect(sowFrom([lot('L-1', good, { isolation: 'distance' }), lot('L-2', good, { isolation: 'cage' })])).toBe('L-2');
    expect(sowFrom([lot('L-1', { ...good, chanceOfRaisingNextSeason: 0.96 }), lot('L-2', good)])).toBe('L-2');
    expect(sowFrom([lot('L-2', good), lot('L-1', good)])).toBe('L-1');
  });

  test('when none is safe, a true lot with an even chance comes before an open-pollinated one that is sure', () => {
    const sure = lot('L-2', good, { isolation: 'none' });
    expect(sowFrom([lot('L-1', { ...dying, chanceOfRaisingNextSeason: 0.6 }), sure])).toBe('L-1');
    expect(sowFrom([lot('L-1', { ...dying, chanceOfRaisingNextSeason: 0.3 }), sure])).toBe('L-2');
    expect(sowFrom([lot('L-1', dying), lot('L-3', { ...dying, chanceOfRaisingNextSeason: 0.4 })])).toBe('L-3');
  });
});

test('the list runs from most to least urgent, ties by name', () => {
  const list = [
    { name: 'b', urgency: 5 },
    { name: 'c', urgency: 300 },
    { name: 'a', urgency: 5 },
  ];
  expect(byUrgency(list).map(({ name }) => name)).toEqual(['c', 'a', 'b']);
  expect(list[0]?.name).toBe('b');
});

test('refuses an isolation that does not exist', () => {
  expect(() => judgeAccession([lot('L-1', good, { isolation: 'hope' })], 'insect')).toThrow(/hope/);
});
