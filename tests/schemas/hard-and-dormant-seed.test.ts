import { describe, expect, test } from 'vitest';
import type { z } from 'zod';
import {
  cutSchema,
  sideSamplesSchema,
  tetrazoliumSchema,
  treatedSampleSchema,
} from '../../lib/schemas/calculators/hard-and-dormant-seed';

const errors = (schema: z.ZodType, typed: Record<string, string>) =>
  Object.fromEntries((schema.safeParse(typed).error?.issues ?? []).map(({ path, message }) => [path[0], message]));

describe('side samples', () => {
  const good = { seeds: '100', normal: '60', hard: '30', hardLooked: '10', hardAlive: '8' };

  test('what is left empty was not seen', () => {
    expect(sideSamplesSchema.parse(good)).toMatchObject({ hard: 30, fresh: 0, freshLooked: 0, freshAlive: 0 });
  });

  test('the classes cannot come to more than was set, nor a part to more than its whole', () => {
    expect(errors(sideSamplesSchema, { ...good, fresh: '10' })).toEqual({});
    expect(errors(sideSamplesSchema, { ...good, fresh: '11' }).seeds).toMatch(/come to 101/);
    expect(errors(sideSamplesSchema, { ...good, hardLooked: '31' }).hardLooked).toMatch(/Only 30/);
    expect(errors(sideSamplesSchema, { ...good, hardAlive: '11' }).hardAlive).toMatch(/Only 10/);
    expect(errors(sideSamplesSchema, { ...good, freshLooked: '1' }).freshLooked).toMatch(/Only 0 stayed fresh/);
  });
});

describe('tetrazolium and cut tests', () => {
  test('need one seed counted', () => {
    expect(errors(tetrazoliumSchema, { stained: '0' }).stained).toMatch(/at least one/);
    expect(errors(tetrazoliumSchema, { stained: '0', unstained: '1' })).toEqual({});
    expect(errors(cutSchema, { firm: '0' }).firm).toMatch(/at least one/);
    expect(errors(cutSchema, { firm: '0', rotten: '1' })).toEqual({});
  });

  test('a germination test comes with both figures or not at all', () => {
    expect(errors(tetrazoliumSchema, { stained: '45', grew: '40' }).set).toMatch(/both/);
    expect(errors(tetrazoliumSchema, { stained: '45', set: '50' }).grew).toMatch(/both/);
    expect(errors(tetrazoliumSchema, { stained: '45', grew: '51', set: '50' }).grew).toMatch(/More seeds/);
  });
});

test('neither sample can grow more seeds than were set', () => {
  const good = { treatedGrew: '50', treatedSet: '50', plainGrew: '0', plainSet: '50' };
  expect(errors(treatedSampleSchema, good)).toEqual({});
  expect(errors(treatedSampleSchema, { ...good, treatedGrew: '51' }).treatedGrew).toMatch(/More seeds/);
  expect(errors(treatedSampleSchema, { ...good, plainGrew: '51' }).plainGrew).toMatch(/More seeds/);
});
