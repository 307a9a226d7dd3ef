/*
 * What goes wrong at the last count, said beside the form: how to class the seeds that are hard to class.
 */
import type { FactMark } from '../reference/crop-facts';

export interface CountingAdvice {
  key: 'swollen-seed' | 'hard-seed' | 'infected-seedlings' | 'clusters' | 'mould';
  text: string;
  mark: FactMark;
  source: string;
}

const FEDERAL = 'US Federal Seed Act regulations (2015 edition, orientation only), 7 CFR';

/** Families whose swollen seed is given five more days: legumes (all of them), okra and cotton. */
const SWOLLEN_SEED_FAMILIES = ['Fabaceae', 'Malvaceae'];

/** Crops whose "seed" is a cluster of fruits. */
const CLUSTER_GENERA = ['Beta'];

/**
 * How to class doubtful seeds and seedlings of a crop.
 *
 * @param crop.family          botanical family
 * @param crop.scientificName  genus first
 * @param crop.hardSeedOccurs  whether its testing method expects hard seed
 * @returns advice that applies, what is special to the crop first
 * Checked in tests/domain/germination/counting-advice.test.ts
 */
export function countingAdvice(crop: {
  family: string;
  scientificName: string;
  hardSeedOccurs: boolean;
}): CountingAdvice[] {
  const advice: CountingAdvice[] = [];
  if (SWOLLEN_SEED_FAMILIES.includes(crop.family)) {
    advice.push({
      key: 'swollen-seed',
      text: 'Seed that is swollen or just germinating on the last day gets 5 more days before it is classed.',
      mark: 'published',
      source: `${FEDERAL} 201.57 (legumes, okra, cotton)`,
    });
  }
  if (crop.hardSeedOccurs) {
    advice.push({
      key: 'hard-seed',
      text: 'Hard seed took up no water: it is as firm as on the first day. It is alive, and counts towards viability.',
      mark: 'published',
      source: `${FEDERAL} 201.57`,
    });
  }
  if (CLUSTER_GENERA.some((genus) => crop.scientificName.startsWith(`${genus} `))) {
    advice.push({
      key: 'clusters',
      text: 'A cluster that gives one normal seedling or more counts as one.',
      mark: 'published',
      source: `${FEDERAL} 201.56`,
    });
  }
  advice.push(
    {
      key: 'infected-seedlings',
      text: 'A mouldy seedling that still has all its parts counts as normal.',
      mark: 'published',
      source: `${FEDERAL} 201.56`,
    },
    {
      key: 'mould',
      text: 'Take mouldy dead seed out as soon as you see it and count it as dead, before it infects its neighbours.',
      mark: 'common practice',
      source: 'Common practice at the bench',
    },
  );
  return advice;
}
