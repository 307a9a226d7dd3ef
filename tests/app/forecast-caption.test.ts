import { describe, expect, it } from 'vitest';
import { forecastCaption } from '@/app/_format/forecast-caption';

const leek = {
  viability: { median: 0.742, lower: 0.638, upper: 0.821 },
  chanceBelow: 0.69,
  threshold: 0.79,
  seedsLeft: 1840,
  plantsNeeded: 60,
  cropName: 'Leek',
  nextSeason: 2027,
  rescue: false,
  lastSafeSeason: 2027,
  tests: 4,
};

describe('the forecast in plain words', () => {
  it('says how many are alive, the chance of being below the line, and the last season', () => {
    expect(forecastCaption(leek)).toBe(
      'Most likely **74 in 100 seeds are alive today**, and nine times in ten the truth lies between 64 and 82. ' +
        'There is a **69 % chance that it is already below** the line of 79 %. ' +
        '**2027 is the last season** in which what is left will surely raise the 60 plants that a leek needs.',
    );
  });

  it('says that nobody has tested the lot', () => {
    expect(forecastCaption({ ...leek, tests: 0 })).toMatch(
      /^Nobody has tested this lot\. By the equation alone, most likely/,
    );
  });

  it('never turns a near certainty into a bare 0 or 100', () => {
    expect(forecastCaption({ ...leek, chanceBelow: 0.001 })).toContain('all but certain to be above the line');
    expect(forecastCaption({ ...leek, chanceBelow: 0.999 })).toContain('**all but certain to be below** the line');
  });

  it('calls for all the seed in a rescue', () => {
    expect(forecastCaption({ ...leek, rescue: true, lastSafeSeason: null })).toContain(
      '**sow it in 2027, all of it if need be**',
    );
  });

  it('speaks of generations when no last season is in sight, and of none when the packet is empty', () => {
    expect(forecastCaption({ ...leek, lastSafeSeason: null })).toContain('for generations to come');
    expect(forecastCaption({ ...leek, seedsLeft: 0 })).toContain('No seed of it is left.');
  });

  it('writes an onion, a leek', () => {
    expect(forecastCaption({ ...leek, cropName: 'Onion' })).toContain('that an onion needs');
  });
});
