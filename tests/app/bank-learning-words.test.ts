import { describe, expect, it } from 'vitest';
import { bankLearningWords, timesFigure } from '@/app/_format/bank-learning-words';
import type { CropLearning } from '@/lib/domain/longevity/bank-learning/learn-crop-prior';

const figure = (estimate: number, off: number) => ({
  estimate,
  standardError: off / 1.645,
  lower: estimate - off,
  upper: estimate + off,
});
const learnt: Extract<CropLearning, { ok: true }> = {
  ok: true,
  lots: 15,
  tests: 38,
  lotsTellingRate: 9,
  level: 0.9,
  published: { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } },
  suggested: { initial: { mean: 1.55, sd: 0.5 }, logRate: { mean: 0.34, sd: 0.4 } },
  initial: { mean: figure(1.55, 0.2), sd: figure(0.5, 0.1) },
  logRate: { mean: figure(0.34, 0.24), sd: figure(0.4, 0.1) },
};

describe('bankLearningWords', () => {
  it('says on how many tests it rests, what was expected before, and how sure it is', () => {
    expect(bankLearningWords(learnt, 'Leek')).toBe(
      '38 tests of 15 lots of leek: a fresh lot is typically **94\u00a0%** alive (91 to 96) rather than the 96\u00a0% expected before; they age **1.4 times as fast** as the published equation says (1.1 to 1.8 times, nine times in ten).',
    );
  });

  it('does not call the same figure a change', () => {
    const same = { ...learnt, initial: { ...learnt.initial, mean: figure(1.76, 0.1) } };
    expect(bankLearningWords(same, 'Leek')).toContain('**96\u00a0%** alive (95 to 97), as expected before');
  });

  it('names a rate that was expected to be fast before, and one that is as published', () => {
    const doubtful = { ...learnt, published: { ...learnt.published, logRate: { mean: 0.3, sd: 0.9 } } };
    expect(bankLearningWords(doubtful, 'Leek')).toContain(
      '(1.1 to 1.8 times, nine times in ten); 1.3 times was expected',
    );
    expect(
      bankLearningWords({ ...learnt, logRate: { mean: figure(0.01, 0.2), sd: figure(0.4, 0.1) } }, 'Leek'),
    ).toContain('they age **as fast** as the published equation says (0.83 to 1.2 times, nine times in ten).');
  });

  it('says that the rate cannot be learnt, and why', () => {
    expect(bankLearningWords({ ...learnt, logRate: null, lotsTellingRate: 2 }, 'Leek')).toContain(
      'cannot be learnt yet: only 2 of them have two tests with enough ageing between them (0.1 probits).',
    );
    expect(bankLearningWords({ ...learnt, logRate: null, lotsTellingRate: 0 }, 'Leek')).toContain('none has two tests');
  });

  it('says when there is nothing to learn from', () => {
    const none = (lots: number, reason: 'too-few-lots' | 'lots-too-different') =>
      bankLearningWords({ ok: false, reason, lots, tests: lots, lotsTellingRate: 0 }, 'Leek');
    expect(none(0, 'too-few-lots')).toBe('No lot of leek has been tested yet.');
    expect(none(1, 'too-few-lots')).toContain('One lot of leek has been tested: too few');
    expect(none(2, 'too-few-lots')).toContain('2 lots of leek have been tested: too few');
    expect(none(9, 'lots-too-different')).toContain('mistaken counts');
  });

  it('writes factors with two figures', () => {
    expect([0.743, 1, 1.38, 9.96, 12.4].map(timesFigure)).toEqual(['0.74', '1.0', '1.4', '10', '12']);
  });
});
