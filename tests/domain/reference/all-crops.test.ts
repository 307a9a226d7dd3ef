import { describe, expect, it } from 'vitest';
import { CROPS, factSpan, getCropFacts } from '../../../lib/domain/reference/all-crops';
import {
  FACT_KINDS,
  FACT_MARKS,
  LIFE_CYCLES,
  POLLINATIONS,
  STORAGE_BEHAVIOURS,
  SUBSTRATA,
} from '../../../lib/domain/reference/crop-facts';
import { LONGEVITY_CONSTANTS } from '../../../lib/domain/reference/longevity-constants';

const WANTED =
  `Leek, Onion, Welsh onion, Chive, Barley, Wheat, Oat, Rye, Maize, Sweet corn, Rice, Sorghum, Pearl millet,
  Foxtail millet, Quinoa, Amaranth, Buckwheat, Beet, Chard, Spinach, Cabbage, Kale, Broccoli, Cauliflower, Kohlrabi,
  Brussels sprouts, Turnip, Swede, Chinese cabbage, Radish, Mustard, Rocket, Lettuce, Endive, Chicory, Sunflower,
  Globe artichoke, Cardoon, Carrot, Parsnip, Parsley, Celery, Celeriac, Dill, Coriander, Fennel, Tomato, Pepper,
  Aubergine, Tomatillo, Potato (true seed), Cucumber, Melon, Watermelon, Squash, Pumpkin, Bottle gourd, Pea,
  Common bean, Runner bean, Lima bean, Broad bean, Cowpea, Mung bean, Soybean, Chickpea, Lentil, White lupin,
  Red clover, White clover, Alfalfa, Peanut, Okra, Cotton, Flax, Hemp, Basil, Sage, Asparagus, Rhubarb, Salsify`
    .split(',')
    .map((name) => name.trim());

describe('the crops', () => {
  it('are at least 55, with every crop a small bank is likely to keep', () => {
    expect(CROPS.length).toBeGreaterThanOrEqual(55);
    for (const name of WANTED) expect(getCropFacts(name)?.name, name).toBe(name);
  });

  it('have names that are unique whatever the case', () => {
    const names = CROPS.map((crop) => crop.name.toLowerCase());
    expect(new Set(names).size).toBe(names.length);
  });

  it('each have every kind of fact and a germination method', () => {
    for (const crop of CROPS) {
      for (const kind of FACT_KINDS) expect(factSpan(crop, kind).ok, `${crop.name}: ${kind}`).toBe(true);
      expect(crop.germination.length, crop.name).toBeGreaterThanOrEqual(1);
      expect(crop.family, crop.name).toMatch(/aceae$/);
    }
  });

  it('use only the listed words', () => {
    for (const crop of CROPS) {
      expect(POLLINATIONS).toContain(crop.pollination);
      expect(LIFE_CYCLES).toContain(crop.lifeCycle);
      expect(STORAGE_BEHAVIOURS).toContain(crop.storageBehaviour.behaviour);
      for (const method of crop.germination) {
        expect(method.substrataInWords).toEqual(method.substrata.map((code) => SUBSTRATA[code]));
      }
    }
  });

  it('do not repeat a fact: one per kind and source', () => {
    for (const crop of CROPS) {
      const keys = crop.facts.map((fact) => `${fact.kind}|${fact.source}|${fact.lower}|${fact.upper}`);
      expect(new Set(keys).size, crop.name).toBe(keys.length);
    }
  });
});

describe('every figure', () => {
  const marked = CROPS.flatMap((crop) => [
    ...crop.facts.map((fact) => ({ name: `${crop.name}: ${fact.kind}`, ...fact })),
    ...crop.germination.map((method) => ({ name: `${crop.name}: germination`, ...method })),
    { name: `${crop.name}: storage behaviour`, ...crop.storageBehaviour },
  ]);

  it('has a mark and a source', () => {
    for (const fact of marked) {
      expect(FACT_MARKS, fact.name).toContain(fact.mark);
      expect(fact.source.trim().length, fact.name).toBeGreaterThan(15);
    }
  });

  it('that is published has an address, and one that is recalled says so in its source', () => {
    for (const fact of marked) {
      if (fact.mark === 'published') expect(fact.source, fact.name).toMatch(/https?:\/\//);
      if (fact.mark === 'from memory') expect(fact.source, fact.name).toMatch(/from memory|recalled/i);
      else expect(fact.source, fact.name).not.toMatch(/from memory/i);
    }
  });

  it('lies in the range that its unit allows, low end first', () => {
    const limits = {
      'isolation distance': [0, 10_000],
      'minimum plants': [5, 200],
      'minimum germination': [0.4, 0.95],
      'seeds per gram': [0.5, 3000],
      'storage life': [1, 10],
      'oil fraction': [0.005, 0.55],
    } as const;
    for (const crop of CROPS) {
      for (const { kind, lower, upper } of crop.facts) {
        const name = `${crop.name}: ${kind} ${lower}-${upper}`;
        expect(lower, name).not.toBeNull();
        expect(upper, name).not.toBeNull();
        expect(lower as number, name).toBeLessThanOrEqual(upper as number);
        expect(lower as number, name).toBeGreaterThanOrEqual(limits[kind][0]);
        expect(upper as number, name).toBeLessThanOrEqual(limits[kind][1]);
      }
    }
  });

  it('of days counts up: the first count is before the final count', () => {
    for (const { name, germination } of CROPS) {
      for (const { firstCountDays, finalCountDays } of germination) {
        if (firstCountDays !== null) expect(firstCountDays, name).toBeLessThan(finalCountDays);
      }
    }
  });
});

describe('longevity constants of a crop', () => {
  it('are known ones', () => {
    const keys = LONGEVITY_CONSTANTS.map((constants) => constants.key);
    for (const crop of CROPS) expect(keys, crop.name).toContain(crop.longevityConstantsKey);
  });

  it('have a reason when borrowed, naming the lender, and none when they are the species’ own', () => {
    for (const crop of CROPS) {
      const lender = LONGEVITY_CONSTANTS.find(({ key }) => key === crop.longevityConstantsKey);
      if (crop.constantsBorrowed) {
        expect(crop.borrowedBecause?.toLowerCase(), crop.name).toContain(lender?.name.toLowerCase());
      } else expect(crop.borrowedBecause, crop.name).toBeNull();
    }
  });

  it('are called the crop’s own only when fitted to its species', () => {
    for (const crop of CROPS) {
      const lender = LONGEVITY_CONSTANTS.find(({ key }) => key === crop.longevityConstantsKey);
      // Genus and species without author, form or subspecies; the constants give a synonym in brackets or as 'syn.'.
      const species = crop.scientificName.split(' ').slice(0, 2).join(' ');
      const [genus, epithet] = species.split(' ');
      const same =
        lender?.species.startsWith(species) ||
        (lender?.species.startsWith(genus ?? '') && lender.species.includes(`. ${epithet}`));
      expect(!crop.constantsBorrowed, crop.name).toBe(Boolean(same));
    }
  });

  it('of okra are borrowed from cotton: no okra constants are published', () => {
    expect(getCropFacts('okra')).toMatchObject({ longevityConstantsKey: 'cotton', constantsBorrowed: true });
  });

  it('of beet and chard are sugar beet’s, their own species', () => {
    for (const name of ['Beet', 'Chard']) {
      expect(getCropFacts(name)).toMatchObject({ longevityConstantsKey: 'sugar-beet', constantsBorrowed: false });
    }
  });
});

describe('hard seed', () => {
  it('is flagged for every legume, okra and cotton, and for nothing else', () => {
    for (const crop of CROPS) {
      const expected = crop.family === 'Fabaceae' || crop.family === 'Malvaceae';
      expect(
        crop.germination.some((method) => method.hardSeedOccurs),
        crop.name,
      ).toBe(expected);
    }
  });
});

describe('factSpan', () => {
  it('spans every source of the crop', () => {
    // Tomato isolation: 7 CFR 201.76 gives 30-200 ft, the growers' chart 10 ft.
    const tomato = getCropFacts('Tomato');
    const span = tomato && factSpan(tomato, 'isolation distance');
    expect(span).toMatchObject({ ok: true, lower: 3.05, upper: 60.96 });
    expect(span?.ok && span.facts.length).toBe(2);
  });

  it('says that a kind is not known instead of giving a number', () => {
    const tomato = getCropFacts('Tomato');
    expect(tomato && factSpan({ ...tomato, facts: [] }, 'storage life')).toEqual({ ok: false, reason: 'not-known' });
  });
});

describe('getCropFacts', () => {
  it('finds a crop whatever the case, and nothing for a crop it does not know', () => {
    expect(getCropFacts(' welsh ONION ')?.scientificName).toBe('Allium fistulosum');
    expect(getCropFacts('Moon melon')).toBeUndefined();
  });
});
