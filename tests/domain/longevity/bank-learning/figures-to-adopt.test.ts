import { describe, expect, it } from 'vitest';
import { figuresInOneLine, figuresToAdopt } from '../../../../lib/domain/longevity/bank-learning/figures-to-adopt';
import { learnCropPrior } from '../../../../lib/domain/longevity/bank-learning/learn-crop-prior';
import { simulatedLots } from './simulated-lots';

const published = { initial: { mean: 1.75, sd: 0.75 }, logRate: { mean: 0, sd: 0.5 } };
const learnt = (testedAt: number[]) => {
  const learning = learnCropPrior({ lots: simulatedLots({ rngSeed: 9, count: 5, testedAt }), published });
  if (!learning.ok) throw new Error(learning.reason);
  return learning;
};

describe('figures to adopt', () => {
  it('are the suggestion to two digits', () => {
    const learning = learnt([0, 0.7]);
    const figures = figuresToAdopt(learning);
    expect(figures.priorInitialMean).toBeCloseTo(learning.suggested.initial.mean, 2);
    expect(figures.priorLogRateSd).toBeCloseTo(learning.suggested.logRate.sd, 2);
    expect(figuresInOneLine(figures)).toMatch(/^\d\.\d{1,2} 0\.\d{1,2} -?\d(\.\d{1,2})? 0\.\d{1,2}$/);
  });

  it('leave the rate out when it was not learnt', () => {
    const figures = figuresToAdopt(learnt([0]));
    expect(Object.keys(figures)).toEqual(['priorInitialMean', 'priorInitialSd']);
    expect(figuresInOneLine(figures).split(' ')).toHaveLength(2);
  });

  it('write no minus zero', () => {
    const learning = learnt([0, 0.7]);
    const flat = { ...learning, suggested: { ...learning.suggested, logRate: { mean: -0.001, sd: 0.5 } } };
    expect(figuresInOneLine(figuresToAdopt(flat))).toContain(' 0 0.5');
    expect(Object.is(figuresToAdopt(flat).priorLogRateMean, 0)).toBe(true);
  });
});
