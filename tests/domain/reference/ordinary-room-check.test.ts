import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { CROPS, getCropFacts } from '../../../lib/domain/reference/all-crops';
import { getLongevityConstants, LONGEVITY_CONSTANTS } from '../../../lib/domain/reference/longevity-constants';
import { checkOrdinaryRoom, ordinaryRoomAgeing } from '../../../lib/domain/reference/ordinary-room-check';
import golden from '../../golden/reference-ordinary-room.json';
import { ordinaryRoomTable } from './ordinary-room-table';

const ratioOf = (name: string, longevityConstantsKey?: string) => {
  const crop = getCropFacts(name);
  if (!crop) throw new Error(`no crop ${name}`);
  const check = checkOrdinaryRoom(longevityConstantsKey ? { ...crop, longevityConstantsKey } : crop);
  if (!check.ok) throw new Error(check.reason);
  return check.ratio;
};

describe('ageing in an ordinary room', () => {
  it('agrees with R over all constants and a grid of oil contents', () => {
    expect(golden.rows.length).toBe(19 * 7);
    for (const row of golden.rows) {
      const constants = LONGEVITY_CONSTANTS.find(({ name }) => name.toLowerCase() === row.crop.toLowerCase());
      if (!constants) throw new Error(`no constants for ${row.crop}`);
      const ageing = ordinaryRoomAgeing(constants, row.oilFraction);
      for (const key of ['moisturePercent', 'yearsPerProbit'] as const) {
        const error = Math.abs(ageing[key] / row[key] - 1);
        expect(error, `${row.crop} oil ${row.oilFraction} ${key}: ${ageing[key]}, R ${row[key]}`).toBeLessThan(1e-12);
      }
    }
  });

  it('is longer for oilier seed, which settles drier in the same air', () => {
    const cotton = getLongevityConstants('cotton');
    const [lean, oily] = [ordinaryRoomAgeing(cotton, 0.02), ordinaryRoomAgeing(cotton, 0.4)];
    expect(oily.moisturePercent).toBeLessThan(lean.moisturePercent);
    expect(oily.yearsPerProbit).toBeGreaterThan(lean.yearsPerProbit);
  });
});

describe('constants against ordinary storage life', () => {
  /** Names of crops whose constants fall outside the tolerated factor. */
  const outside = (borrowed: boolean) =>
    CROPS.filter((crop) => {
      const check = checkOrdinaryRoom(crop);
      return crop.constantsBorrowed === borrowed && check.ok && !check.withinTolerance;
    });

  it('borrowed constants come within a factor of three, but for two wheats that keep those of their genus', () => {
    expect(outside(true).map(({ name }) => name)).toEqual(['Durum wheat', 'Spelt']);
    for (const crop of outside(true)) expect(crop.borrowedBecause).toMatch(/same genus/);
  });

  it('own constants outside it are these three, kept because they are the species’ own', () => {
    expect(outside(false).map(({ name }) => name)).toEqual(['Wheat', 'Foxtail millet', 'Potato (true seed)']);
    // All err on the short side: they call for a test too early, not too late.
    for (const { name } of [...outside(true), ...outside(false)]) expect(ratioOf(name), name).toBeLessThan(1);
  });

  it.each([
    ['Tomato', 'potato'],
    ['Pepper', 'potato'],
    ['Aubergine', 'potato'],
    ['Tomatillo', 'potato'],
    ['Endive', 'lettuce'],
    ['Chicory', 'lettuce'],
    ['Cardoon', 'lettuce'],
    ['Rocket', 'lettuce'],
    ['Garden cress', 'lettuce'],
    ['Garden cress', 'soybean'],
  ])('%s does not borrow from %s, as its reason says: less than a third of its storage life', (name, key) => {
    expect(getCropFacts(name)?.longevityConstantsKey).not.toBe(key);
    expect(ratioOf(name, key)).toBeLessThan(1 / 3);
  });

  it('peanut does not borrow from soybean, as its reason says: over three times its storage life', () => {
    expect(ratioOf('Peanut', 'soybean')).toBeGreaterThan(3);
  });

  it('of oat agree better with barley than with wheat, as its reason says', () => {
    expect(Math.abs(Math.log(ratioOf('Oat', 'barley')))).toBeLessThan(Math.abs(Math.log(ratioOf('Oat', 'wheat'))));
  });

  it('says what is missing instead of comparing', () => {
    const crop = getCropFacts('Onion');
    if (!crop) throw new Error('no onion');
    const without = (kind: string) => ({ ...crop, facts: crop.facts.filter((fact) => fact.kind !== kind) });
    expect(checkOrdinaryRoom(without('oil fraction'))).toEqual({ ok: false, reason: 'oil-not-known' });
    expect(checkOrdinaryRoom(without('storage life'))).toEqual({ ok: false, reason: 'storage-life-not-known' });
  });
});

describe('docs/methods/reference-facts.md', () => {
  it('prints exactly the computed table', () => {
    const page = readFileSync(new URL('../../../docs/methods/reference-facts.md', import.meta.url), 'utf8');
    const printed = page.split('\n').filter((line) => /^\|.*(, own|, borrowed) \|/.test(line));
    expect(printed).toEqual(ordinaryRoomTable());
  });
});
