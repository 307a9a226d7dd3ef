import { describe, expect, it } from 'vitest';
import { storageLifeSchema } from '@/lib/schemas/calculators/storage-life';

const asked = { crop: 'maize', moisture: '9', temperature: '-18', initial: '95', wanted: '85', years: '20' };
const problemsOf = (changes: object) => {
  const read = storageLifeSchema.safeParse({ ...asked, ...changes });
  return read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'));
};

describe('what the calculator of storage life is asked', () => {
  it('reads percents as proportions, moisture as it is, and blanks as nothing', () => {
    expect(storageLifeSchema.parse({ ...asked, store: '', constants: '', beforeYears: '' })).toEqual({
      crop: 'maize',
      moisture: 9,
      temperature: -18,
      initial: 0.95,
      wanted: 0.85,
      years: 20,
    });
  });

  it('wants a crop or constants, either will do', () => {
    expect(problemsOf({ crop: '' })).toEqual(['crop']);
    expect(problemsOf({ crop: '', constants: 'onion' })).toEqual([]);
  });

  it('refuses a viability wanted that is not below the first', () => {
    expect(problemsOf({ wanted: '95' })).toEqual(['wanted']);
    expect(problemsOf({ wanted: '94.9' })).toEqual([]);
  });

  it.each([
    ['initial', '100'],
    ['wanted', '0'],
    ['temperature', '-31'],
    ['temperature', '46'],
    ['moisture', '0'],
    ['years', '0'],
    ['years', '1001'],
    ['moisture', ''],
  ])('refuses %s of "%s"', (field, value) => {
    expect(problemsOf({ [field]: value })).toEqual([field]);
  });

  it('takes the storage before whole or not at all', () => {
    expect(problemsOf({ beforeYears: '1' })).toEqual(['beforeYears']);
    expect(problemsOf({ beforeYears: '1', beforeMoisture: '10' })).toEqual(['beforeYears']);
    expect(problemsOf({ beforeYears: '1', beforeMoisture: '10', beforeTemperature: '25' })).toEqual([]);
  });
});
