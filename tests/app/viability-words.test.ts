import { describe, expect, it } from 'vitest';
import {
  besideForecastInWords,
  foundInWords,
  resultInShort,
} from '@/app/(bank)/germination/viability/_parts/viability-words';
import { cutResult, tetrazoliumResult } from '@/lib/domain/germination/dormancy/viability-test';

const stained = (stainedNormally: number, unstained: number) =>
  tetrazoliumResult({ stainedNormally, stainedAbnormally: 0, unstained });
const cut = (firm: number, dead: number) => cutResult({ firm, empty: 0, insectDamaged: 0, dead });

describe('what was found', () => {
  it('of seed from a packet says how much of the lot is alive, bounds rounded outwards', () => {
    // R prop.test(45, 50, correct = FALSE): 0.7864 to 0.9565
    expect(foundInWords(stained(45, 5), null)).toBe(
      '**45 of 50 seeds stained as living seed does**: between 78 and 96 % of the lot is likely alive.',
    );
  });

  it('of a cut is the most that can be alive, and says so', () => {
    expect(foundInWords(cut(45, 5), null)).toBe(
      '**45 of 50 seeds were full and firm**: likely between 78 and 96 % of the lot, and **no more than that is alive**.',
    );
  });

  it('of seed left over in a tray says nothing of the lot by itself', () => {
    expect(foundInWords(stained(6, 3), 'T-0204')).toBe(
      '**6 of 9 seeds stained as living seed does**, of those left over in T-0204.',
    );
    expect(foundInWords(cut(1, 0), 'T-0204')).toContain('1 of one seed was full and firm');
  });

  it('in short never passes a cut off as what is alive', () => {
    expect(resultInShort(stained(45, 5))).toBe('90 % alive');
    expect(resultInShort(cut(38, 12))).toBe('at most 76 % alive');
  });
});

describe('beside the forecast', () => {
  const forecast = { median: 0.743, lower: 0.64, upper: 0.82 };

  it('names its band, and whether the two fit', () => {
    expect(besideForecastInWords('agrees', forecast)).toBe(
      "The lot's forecast for today is 74 % alive (64 to 82): this test agrees with it.",
    );
    expect(besideForecastInWords('below', forecast)).toContain('finds less, by more than chance explains');
    expect(besideForecastInWords('above', forecast)).toContain('finds more');
  });

  it('does not let a cut confirm it', () => {
    expect(besideForecastInWords('allows', forecast)).toContain('cannot confirm it');
  });
});
