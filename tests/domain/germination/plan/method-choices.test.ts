import { expect, test } from 'vitest';
import { incubatorKey, methodChoices, substratesOf } from '@/lib/domain/germination/plan/method-choices';
import { CROPS } from '@/lib/domain/reference/all-crops';

test('substrates with a comma inside are not torn apart', () => {
  expect(substratesOf('between blotters, paper towel, folded or rolled, sand or soil')).toEqual([
    'between blotters',
    'paper towel, folded or rolled',
    'sand or soil',
  ]);
  expect(substratesOf('coir, vermiculite')).toEqual(['coir', 'vermiculite']);
  expect(substratesOf('')).toEqual([]);
});

test('every method of the reference comes back as the substrates it was joined from', () => {
  for (const method of CROPS.flatMap((crop) => crop.germination)) {
    expect(substratesOf(method.substrataInWords.join(', '))).toEqual(method.substrataInWords);
  }
});

const METHOD = { id: 'm1', substrata: 'top of blotters, sand or soil', temperatures: '20-30; 20', light: false };

test('a tray stands on one substrate at one temperature, the printed first ones first', () => {
  const choices = methodChoices([METHOD, { ...METHOD, id: 'm2', temperatures: 'warm window sill', substrata: '' }]);
  expect(choices.map(({ substrate, temperatures }) => `${substrate} at ${temperatures}`)).toEqual([
    'top of blotters at 20-30',
    'sand or soil at 20-30',
    'top of blotters at 20',
    'sand or soil at 20',
    ' at warm window sill',
  ]);
  expect(new Set(choices.map(({ key }) => key)).size).toBe(choices.length);
  expect(methodChoices([])).toEqual([]);
});

test('trays share an incubator when temperatures and light are the same, whatever the substrate', () => {
  const [first, second] = methodChoices([METHOD]);
  expect(incubatorKey(first)).toBe('20-30');
  expect(incubatorKey(second)).toBe('20-30');
  expect(incubatorKey(methodChoices([{ ...METHOD, light: true }])[0])).toBe('20-30 light');
  expect(incubatorKey(undefined)).toBeNull();
});
