import { describe, expect, test } from 'vitest';
import { LOW_CONSTANT, ovenMethodFor, VERY_WET } from '../../../lib/domain/moisture/oven-methods';
import { CROPS, getCropFacts } from '../../../lib/domain/reference/all-crops';

function adviceFor(name: string) {
  const crop = getCropFacts(name);
  if (crop === undefined) throw new Error(`no crop called ${name}`);
  return ovenMethodFor(crop);
}

describe('oven method for a crop', () => {
  test('the low constant method is 103 C for 17 hours (published), within 101-105 C and 16-18 h (from memory)', () => {
    const { temperatureFromC, temperatureToC, hoursFrom, hoursTo } = LOW_CONSTANT.value;
    expect([(temperatureFromC + temperatureToC) / 2, (hoursFrom + hoursTo) / 2]).toEqual([103, 17]);
    expect([temperatureFromC, temperatureToC, hoursFrom, hoursTo]).toEqual([101, 105, 16, 18]);
  });

  // From memory: the rules' list of species held to the low method.
  test.each([
    'Onion',
    'Leek',
    'Peanut',
    'Cabbage',
    'Turnip',
    'Pepper',
    'Soybean',
    'Cotton',
    'Flax',
    'Radish',
    'Aubergine',
  ])('%s is held to the low method: no hours at 130 C are given', (name) => {
    expect(adviceFor(name).highAllowed.value).toBe('no');
    expect(adviceFor(name).highHours).toBeNull();
  });

  test('aubergine is held to it although the rest of its genus is not', () => {
    expect(adviceFor('Tomato').highAllowed.value).toBe('yes');
    expect(adviceFor('Potato (true seed)').highAllowed.value).toBe('yes');
  });

  // From memory: maize 4 h, other cereals 2 h, most others 1 h.
  test.each([
    ['Maize', 4],
    ['Sweet corn', 4],
    ['Wheat', 2],
    ['Triticale', 2],
    ['Rice', 2],
    ['Tomato', 1],
    ['Pea', 1],
  ])('%s takes %d h at 130-133 C', (name, hours) => {
    expect(adviceFor(name as string).highHours?.value).toBe(hours);
  });

  test('okra has no line that could be recalled: the low method, and that is said', () => {
    expect(adviceFor('Okra').highAllowed.value).toBe('no line known');
    expect(adviceFor('Okra').heat.value.key).toBe('low');
    expect(adviceFor('Okra').highHours).toBeNull();
  });

  // Published (edurev.in): cereals and cotton fine, legumes coarse; pre-dry above 17 %, soybean 10 %, rice 13 %.
  test.each([
    ['Barley', 'fine', 17],
    ['Cotton', 'fine', 17],
    ['Rice', 'fine', 13],
    ['Common bean', 'coarse', 17],
    ['Soybean', 'coarse', 10],
    ['Carrot', undefined, undefined],
    ['Red clover', undefined, undefined],
  ])('%s: ground %s, pre-dried above %s %%', (name, grinding, limit) => {
    expect(adviceFor(name as string).grinding?.value).toBe(grinding);
    expect(adviceFor(name as string).predryAbovePercent?.value).toBe(limit);
  });

  test('very wet seed (above 25 %) is pre-dried at 70 C for 2-5 hours (published)', () => {
    expect(VERY_WET.value).toEqual({ abovePercent: 25, temperatureC: 70, hoursFrom: 2, hoursTo: 5 });
  });

  // Published (ASAE S352, as quoted by a university page).
  test.each([
    ['Maize', 103, 72],
    ['Soybean', 103, 72],
    ['Common bean', 103, 72],
    ['Wheat', 130, 19],
    ['Oat', 130, 22],
    ['Rye', 130, 16],
    ['Sorghum', 130, 18],
    ['Sunflower', 130, 3],
    ['Red clover', 130, 2.5],
  ])('grain standard for %s: %d C for %d h', (name, temperatureC, hours) => {
    expect(adviceFor(name as string).grainStandard?.value).toMatchObject({ temperatureC, hours });
  });

  test('every crop of the reference gets a method, and every line a mark and a source', () => {
    for (const crop of CROPS) {
      const advice = ovenMethodFor(crop);
      for (const line of Object.values(advice)) {
        if (line === null) continue;
        expect(line.source.length, crop.name).toBeGreaterThan(10);
        expect(['published', 'from memory']).toContain(line.mark);
      }
    }
  });
});
