import { describe, expect, test } from 'vitest';
import { type ViabilityFindings, viabilityAdvice } from '@/lib/domain/germination/dormancy/viability-advice';

const quiet: ViabilityFindings = {
  kind: 'tetrazolium',
  seeds: 50,
  alive: 45,
  worthless: 0,
  forecast: 'agrees',
  dormant: 'not-shown',
  tray: null,
};
const reasons = (findings: Partial<ViabilityFindings>) =>
  viabilityAdvice({ ...quiet, ...findings }).map(({ reason }) => reason);
const sentence = (findings: Partial<ViabilityFindings>) => viabilityAdvice({ ...quiet, ...findings })[0]?.sentence;

describe('seed from a packet', () => {
  test('nothing follows from a test that agrees with all else', () => {
    expect(reasons({})).toEqual([]);
    expect(reasons({ forecast: null, dormant: null })).toEqual([]);
    expect(reasons({ kind: 'cut', forecast: 'allows' })).toEqual([]);
  });

  test('more alive than germinates: break the dormancy; a cut does not show it', () => {
    expect(reasons({ dormant: 'shown' })).toEqual(['dormant']);
    expect(reasons({ kind: 'cut', dormant: 'shown' })).toEqual([]);
  });

  test('fewer alive than germinate cannot be, and comes before all else', () => {
    expect(reasons({ dormant: 'contradiction', forecast: 'below' })).toEqual(['look-again', 'less-than-forecast']);
    expect(sentence({ kind: 'cut', dormant: 'contradiction' })).toContain('fewer were firm');
  });

  test('outside the forecast: only a germination test changes it', () => {
    expect(sentence({ forecast: 'below' })).toContain('Test germination now');
    expect(reasons({ forecast: 'above' })).toEqual(['more-than-forecast']);
  });

  test('one in ten empty or eaten is worth a cleaning, less is not', () => {
    expect(reasons({ kind: 'cut', worthless: 0.1 })).toEqual(['clean']);
    expect(reasons({ kind: 'cut', worthless: 0.099 })).toEqual([]);
  });

  test('fewer than fifty seeds tell little', () => {
    expect(reasons({ seeds: 49 })).toEqual(['few-seeds']);
    expect(sentence({ seeds: 1, alive: 1 })).toContain('With 1 seed the');
  });
});

describe('seed left in a tray', () => {
  const closed = { number: 'T-0204', closed: true, hardOrFresh: 12 };

  test('before it is closed: class what was found at the final count', () => {
    expect(reasons({ seeds: 9, tray: { ...closed, closed: false } })).toEqual(['class-at-final-count']);
  });

  test('hard and fresh seed that was found dead counts as alive until the test is corrected', () => {
    expect(sentence({ seeds: 12, alive: 4, tray: closed })).toContain(
      'T-0204 counts all its 12 hard and fresh seeds as alive, and 8 of the 12 looked at were not',
    );
    expect(sentence({ seeds: 5, alive: 4, tray: closed })).toContain('1 of the 5 looked at was not');
  });

  test('nothing is to be classed again when all were alive, or when the look decided the classes', () => {
    expect(reasons({ seeds: 12, alive: 12, tray: closed })).toEqual([]);
    expect(reasons({ seeds: 20, alive: 12, tray: closed })).toEqual([]);
  });

  test('the forecast asks for no further germination test: this one is in it', () => {
    expect(reasons({ seeds: 12, alive: 12, forecast: 'below', tray: closed })).toEqual([]);
    expect(reasons({ seeds: 12, alive: 12, forecast: 'above', tray: closed })).toEqual([]);
  });

  test('few seeds are no reproach: there were no more', () => {
    expect(reasons({ seeds: 3, alive: 3, tray: closed })).toEqual([]);
  });
});
