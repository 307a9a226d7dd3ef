import { describe, expect, it } from 'vitest';
import { type FallsBelow, fallsBelowWords } from '@/app/_format/falls-below-words';

const say = (years: Partial<FallsBelow>) =>
  fallsBelowWords({ threshold: 0.8, earliest: 2029, median: 2034, latest: 2041, ...years });

describe('fallsBelowWords', () => {
  it('says between which years, nine times in ten, and where the middle lies', () => {
    expect(say({})).toBe(
      'It falls below the line of 80 % between **2029 and 2041**, nine times in ten; as likely before **2034** as after.',
    );
    expect(say({ earliest: 2027, median: 2027, latest: 2027 })).toBe(
      'It falls below the line of 80 % in **2027**, nine times in ten.',
    );
  });

  it('never names a date beyond 200 years', () => {
    expect(say({ earliest: null, median: null, latest: null })).toContain('stay above the line of 80 % for 200 years');
    expect(say({ median: null, latest: null })).toBe(
      'It falls below the line of 80 % hardly before **2029** (1 in 20), and more likely than not stays above it for 200 years.',
    );
    expect(say({ latest: null })).toContain('it may also stay above it for more than 200 years');
    for (const years of [
      { latest: null },
      { median: null, latest: null },
      { earliest: 'passed', median: null, latest: null },
    ] as const) {
      expect(say(years)).not.toContain('null');
    }
  });

  it('says what may have happened already', () => {
    expect(say({ earliest: 'passed' })).toBe(
      'It may have fallen below the line of 80 % already; as likely before **2034** as after, and all but surely (19 in 20) by 2041.',
    );
    expect(say({ earliest: 'passed', median: 'passed' })).toContain('More likely than not it has fallen below');
    expect(say({ earliest: 'passed', median: 'passed', latest: null })).toContain('more than 200 years');
    expect(say({ earliest: 'passed', median: 'passed', latest: 'passed' })).toBe(
      'All but surely (19 in 20) it has fallen below the line of 80 % already.',
    );
  });
});
