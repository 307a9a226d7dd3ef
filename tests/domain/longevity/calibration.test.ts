/**
 * A short calibration in every check: 3,000 lots where npm run calibrate takes 40,000. The levels' standard errors are 0.4
 * to 0.9 points, so that four of them are allowed; the draws are fixed, so that it never fails by chance alone.
 */
import { describe, expect, it } from 'vitest';
import { LEVELS, measureCalibration } from '../../calibration/measure-calibration';
import { SCENARIOS } from '../../calibration/scenarios';

const LOTS = 3000;

describe.each(SCENARIOS.filter(({ mustHold }) => mustHold))('where beliefs hold: $name', (scenario) => {
  const { all, chances } = measureCalibration(scenario, LOTS);

  it.each(LEVELS.map((level, index) => ({ level, index })))(
    'a band of $level holds that many lots',
    ({ level, index }) => {
      const share = (all.covered[index] as number) / all.lots;
      expect(Math.abs(share - level)).toBeLessThan(4 * Math.sqrt((level * (1 - level)) / LOTS));
    },
  );

  it('chances come true as often as they are said', () => {
    for (const { lots, said, below } of chances) {
      const mean = said / lots;
      expect(Math.abs(below / lots - mean)).toBeLessThan(4 * Math.sqrt((mean * (1 - mean)) / lots));
    }
  });
});

describe('where beliefs are wrong, the check notices', () => {
  const named = (part: string) => {
    const scenario = SCENARIOS.find(({ name }) => name.includes(part));
    if (!scenario) throw new Error(part);
    return measureCalibration(scenario, LOTS).all;
  };

  it('ageing twice as fast as believed leaves too many lots below the band', () => {
    const { worse, better, lots } = named('twice as fast as believed, own');
    expect(worse / lots).toBeGreaterThan(0.15);
    expect(better).toBeLessThan(worse);
  });

  it('very uneven dishes taken for even make bands too narrow on both sides', () => {
    const { worse, better, lots } = named('taken for even');
    expect(worse / lots).toBeGreaterThan(0.1);
    expect(better / lots).toBeGreaterThan(0.1);
  });
});
