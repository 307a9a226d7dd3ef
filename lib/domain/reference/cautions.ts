import type { FactMark } from './crop-facts';

/** Screens on which a caution belongs. */
export const CAUTION_PLACES = [
  'drying',
  'moisture test',
  'germination test',
  'viability test',
  'stores',
  'packets',
  'harvest',
  'cleaning',
  'crop',
  'sharing',
  'reference',
] as const;
export type CautionPlace = (typeof CAUTION_PLACES)[number];

/** A caution to show where the work is done, in words ready for the screen. */
export type Caution = { key: string; text: string; mark: FactMark; source: string; where: readonly CautionPlace[] };

const RECALLED = 'From memory: general seed-laboratory and workshop safety, not checked';

export const CAUTIONS: readonly Caution[] = [
  {
    key: 'treated-seed',
    text: 'Treated seed is not food or feed. Label it with the substance; if it is harmful add "Do not use for food, feed or oil", and for the most toxic substances the skull and crossbones and "Poison" in red.',
    mark: 'published',
    source: '7 CFR 201.31a (2015 edition), https://github.com/18F/allregs html/sections/7CFR201.31.html',
    where: ['packets', 'sharing'],
  },
  {
    key: 'cobalt-silica-gel',
    text: 'Blue self-indicating silica gel contains cobalt(II) chloride, which may cause cancer when breathed in. Do not crush it and avoid its dust; orange gel has an organic dye, so read its sheet too.',
    mark: 'published',
    source:
      'https://giebel-adsorber.com/faq/are-silica-gels-with-color-indicator-subject-to-labeling/ ; http://70.89.220.117/cleanairnet/Safety%20Alerts/Desiccant%20Warning.htm',
    where: ['drying', 'stores'],
  },
  {
    key: 'drying-heat',
    text: 'Dry seed in moving air, cool and in a thin layer: moist seed dies in air much above 35 °C, and peas and beans that dry fast crack. Never dry seed for keeping in a kitchen oven or in full sun.',
    mark: 'from memory',
    source: RECALLED,
    where: ['drying'],
  },
  {
    key: 'laboratory-chemicals',
    text: 'Concentrated acid, ethylene chlorohydrin, thiram and phenol appear in some official test methods. They are for a laboratory, not for the bench of a seed bank.',
    mark: 'published',
    source: '7 CFR 201.58(b) and 201.58a (2015 edition), https://github.com/18F/allregs html/sections/7CFR201.58.html',
    where: ['germination test', 'viability test', 'reference'],
  },
  {
    key: 'freezing-moist-seed',
    text: 'Freezing kills fresh or moist seed. Dry it first: below about 14 % moisture no ice damage is expected.',
    mark: 'published',
    source: 'http://depts.washington.edu/ehuf473/ehuf473/seedmoisture.htm (14 %)',
    where: ['stores', 'packets', 'drying'],
  },
  {
    key: 'warm-before-opening',
    text: 'Let a sealed container from the freezer or fridge come to room temperature before you open it, or water will condense on the seed.',
    mark: 'from memory',
    source: RECALLED,
    where: ['stores', 'packets'],
  },
  {
    key: 'oven-heat',
    text: 'Moisture ovens run at 103-130 C: they burn, and oily seed may smoke.',
    mark: 'from memory',
    source: RECALLED,
    where: ['moisture test'],
  },
  {
    key: 'oven-sample-is-dead',
    text: 'Seed dried in the moisture oven is dead. Never return it to the lot and never sow it.',
    mark: 'from memory',
    source: RECALLED,
    where: ['moisture test'],
  },
  {
    key: 'tetrazolium',
    text: 'Tetrazolium irritates skin, eyes and lungs, and what it touches turns red. Wear gloves and glasses, weigh the powder without dust where air moves, never pipette by mouth. Keep solution and staining seed in the dark, labelled. Collect what is left over as chemical waste, never down the drain.',
    mark: 'from memory',
    source: `${RECALLED}; the safety data sheet that came with it decides`,
    where: ['germination test', 'viability test'],
  },
  {
    key: 'viability-sample-is-spent',
    text: 'Seed that was stained or cut is spent. Never return it to the lot, never sow, eat or feed it; write it off as seed used for testing.',
    mark: 'common practice',
    source: 'Common practice at the bench: a stained or cut seed does not grow, and its chemicals stay in it',
    where: ['viability test'],
  },
  {
    key: 'blades',
    text: 'Scalpels and razor blades slip on hard seed. Soak the seed first, hold it with forceps or a holder and not between fingers, cut away from the hand; used blades go into a sharps box.',
    mark: 'from memory',
    source: RECALLED,
    where: ['viability test'],
  },
  {
    key: 'local-laboratory-rules',
    text: 'Rules for chemicals, waste and work with them differ from place to place. They come before anything said here; where a trained or licensed person is asked for, leave it to one.',
    mark: 'common practice',
    source: 'Common practice: local rules on chemicals and waste decide',
    where: ['viability test'],
  },
  {
    key: 'bleach-and-acids',
    text: 'Never mix bleach with acid or ammonia: poisonous gas forms. Seed coats are softened by soaking or nicking; acid is for a laboratory, with goggles, and acid goes into water, never water into acid.',
    mark: 'from memory',
    source: RECALLED,
    where: ['germination test', 'viability test', 'cleaning'],
  },
  {
    key: 'liquid-nitrogen',
    text: 'Liquid nitrogen causes cold burns, and in a closed room it can suffocate.',
    mark: 'from memory',
    source: RECALLED,
    where: ['stores'],
  },
  {
    key: 'dust',
    text: 'Threshing and cleaning make fine dust. Wear a dust mask and work where air moves.',
    mark: 'from memory',
    source: RECALLED,
    where: ['cleaning', 'harvest'],
  },
  {
    key: 'poisonous-seed',
    text: 'Some seed is poisonous: castor bean, jequirity, foxglove, datura, bitter lupin, raw kidney bean, apple pips in bulk. Label it and keep it away from children and food.',
    mark: 'from memory',
    source: RECALLED,
    where: ['crop', 'packets', 'sharing'],
  },
  {
    key: 'bitter-cucurbits',
    text: 'A bitter squash, cucumber or melon can poison. Taste a little of the ripe fruit and spit it out; if it is bitter, save no seed from it.',
    mark: 'from memory',
    source: "From memory for the rule; a grower's report was read, https://permies.com/t/18011/",
    where: ['harvest', 'crop'],
  },
  {
    key: 'seed-borne-disease',
    text: 'Saved seed can carry disease. Save from healthy plants, and keep seed from sick plantings apart.',
    mark: 'from memory',
    source: RECALLED,
    where: ['harvest', 'sharing'],
  },
  {
    key: 'local-law',
    text: 'Plant-health, seed-labelling and variety-protection law differ from place to place. Local rules and licensed practice decide.',
    mark: 'from memory',
    source: 'From memory: general knowledge, not legal advice',
    where: ['sharing', 'reference'],
  },
  {
    key: 'one-countrys-standard',
    text: "Minimum germination standards shown are one country's, from a 2015 edition amended since. They are for orientation only.",
    mark: 'published',
    source: '7 CFR 201.31 (2015 edition); that it was amended in 2020 is recalled (85 FR 40578)',
    where: ['germination test', 'reference'],
  },
];

/**
 * The cautions that belong on one screen.
 *
 * @param place where the work is done
 * @returns cautions in the order of the list; may be empty
 * Checked in tests/domain/reference/cautions.test.ts
 */
export function cautionsFor(place: CautionPlace): Caution[] {
  return CAUTIONS.filter((caution) => caution.where.includes(place));
}
