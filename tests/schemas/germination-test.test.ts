import { describe, expect, test } from 'vitest';
import { germinationTestInput } from '../../lib/schemas/germination-test';

const TODAY = '2026-11-25';
const dish = (overrides: Record<string, unknown> = {}) => ({ seeds: '50', normal: '40', ...overrides });
const form = (overrides: Record<string, unknown> = {}) => ({
  lot: 'L-2020-001',
  setOn: '2026-03-02',
  finishedOn: '2026-03-16',
  replicates: [dish()],
  ...overrides,
});
const parse = (overrides: Record<string, unknown> = {}) => germinationTestInput(TODAY).parse(form(overrides));
const messages = (overrides: Record<string, unknown> = {}) => {
  const result = germinationTestInput(TODAY).safeParse(form(overrides));
  return result.success ? {} : Object.fromEntries(result.error.issues.map((one) => [one.path.join('.'), one.message]));
};

describe('replicates', () => {
  test('blank abnormal, hard and fresh mean none, and blank dead means the rest', () => {
    expect(parse({ replicates: [dish({ abnormal: '3', hard: '', fresh: ' ', dead: '' })] }).replicates).toEqual([
      { seeds: 50, normal: 40, abnormal: 3, hard: 0, fresh: 0, dead: 7 },
    ]);
  });

  test('nothing is left over when the classes fill the dish', () => {
    expect(parse({ replicates: [dish({ normal: '48', fresh: '2' })] }).replicates[0]?.dead).toBe(0);
  });

  test('a row in which nothing was written is dropped', () => {
    const blank = { seeds: '', normal: ' ', abnormal: '', hard: '', fresh: '', dead: '' };
    expect(parse({ replicates: [blank, dish(), blank, dish({ normal: '39' })] }).replicates).toHaveLength(2);
  });

  test('a hole in the rows, as the form sends it, is no replicate', () => {
    const rows: unknown[] = [];
    rows[2] = dish();
    expect(parse({ replicates: rows }).replicates).toHaveLength(1);
  });

  test('seeds without a count are asked for, never taken as all dead', () => {
    expect(messages({ replicates: [dish(), { seeds: '50', normal: '' }] })).toEqual({
      'replicates.1.normal': 'Write how many became normal seedlings, 0 if none did.',
    });
    expect(parse({ replicates: [dish({ normal: '0' })] }).replicates[0]?.dead).toBe(50);
  });

  test('more classed than set: the message says both numbers, beside the row as it was typed', () => {
    const blank = { seeds: '', normal: '' };
    expect(messages({ replicates: [dish(), blank, dish({ normal: '48', abnormal: '3' })] })).toEqual({
      'replicates.2': 'The classes add to 51, but only 50 seeds were set.',
    });
  });

  test('fewer classed than set, with dead written down: the message says both numbers', () => {
    expect(messages({ replicates: [dish({ dead: '6' })] })['replicates.0']).toMatch(/add to 46 of the 50 seeds/);
    expect(messages({ replicates: [dish({ dead: '10' })] })).toEqual({});
  });

  test('messages of several rows are given at once', () => {
    const rows = [dish({ normal: '51' }), dish({ normal: '4.5' }), dish({ seeds: '0', normal: '0' })];
    expect(Object.keys(messages({ replicates: rows }))).toEqual([
      'replicates.0',
      'replicates.1.normal',
      'replicates.2.seeds',
    ]);
  });

  test('at least one replicate is needed and at most a hundred are taken', () => {
    const needed = { replicates: 'Write down at least one replicate.' };
    expect(messages({ replicates: undefined })).toEqual(needed);
    expect(messages({ replicates: 'x' })).toEqual(needed);
    expect(messages({ replicates: [] })).toEqual(needed);
    expect(messages({ replicates: [{ seeds: '', normal: '' }] })).toEqual(needed);
    expect(parse({ replicates: Array.from({ length: 100 }, () => dish()) }).replicates).toHaveLength(100);
    expect(Object.keys(messages({ replicates: Array.from({ length: 101 }, () => dish()) }))).toEqual(['replicates']);
  });
});

describe('dates', () => {
  test('neither date lies in the future', () => {
    expect(messages({ setOn: '2026-11-24', finishedOn: '2026-11-26' }).finishedOn).toMatch(/after today/);
    expect(messages({ setOn: '2026-11-26', finishedOn: '2026-11-27' }).setOn).toMatch(/after today/);
    expect(messages({ setOn: TODAY, finishedOn: TODAY })).toEqual({});
  });

  test('a test does not finish before it was set', () => {
    expect(messages({ setOn: '2026-03-02', finishedOn: '2026-03-01' }).finishedOn).toMatch(/set on 2026-03-02/);
  });

  test('two years is a test, a day more is a slip of the year', () => {
    expect(messages({ setOn: '2024-03-01', finishedOn: '2026-03-01' })).toEqual({});
    expect(messages({ setOn: '2024-03-01', finishedOn: '2026-03-02' }).finishedOn).toMatch(/731 days/);
  });
});

describe('packet and correction', () => {
  test('taking the seeds out needs a packet', () => {
    expect(messages({ takeSeed: 'on' })).toEqual({
      packetId: 'Choose the packet from which the seeds were taken.',
    });
    expect(messages({ takeSeed: 'on', packetId: 'p' })).toEqual({});
    expect(parse({}).takeSeed).toBe(false);
  });

  test('a correction needs its reason', () => {
    expect(Object.keys(messages({ correctsId: 't', correctionReason: ' ' }))).toEqual(['correctionReason']);
    expect(messages({ correctsId: 't', correctionReason: 'Two dishes were swapped.' })).toEqual({});
  });
});
