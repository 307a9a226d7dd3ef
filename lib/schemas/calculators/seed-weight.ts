/** Seed weight and number: what the forms of its calculator are asked. */
import { z } from 'zod';
import {
  countBetween,
  formNumber,
  moisturePercent,
  numberBetween,
  optionalField,
  positiveWeightG,
  textUpTo,
} from '../field-schemas';
import { SEED_COUNT, WEIGHT_G } from '../limits';
import { cropName } from './crop-oil';

/** Replicates that anybody weighs; the rule stops at 16. */
export const MOST_REPLICATES = 64;

const replicateWeights = textUpTo(2_000).transform((text, context) => {
  const words = text.split(/[\s;]+|,\s+/).filter((word) => word !== '' && word !== 'g');
  const weights = words.map((word) => formNumber(word, 'g'));
  const wrong = words.find((_, i) => typeof weights[i] !== 'number');
  const refuse = (message: string) => {
    context.addIssue(message);
    return z.NEVER;
  };
  if (wrong !== undefined) return refuse(`"${wrong}" is not a weight: write grams, apart by spaces.`);
  const read = weights.filter((weight) => typeof weight === 'number');
  if (!read.every((weight) => weight >= WEIGHT_G.min && weight <= WEIGHT_G.max)) {
    return refuse(`Write grams between ${WEIGHT_G.min} and ${WEIGHT_G.max}.`);
  }
  if (read.length < 2) return refuse('Write at least two weights: one alone shows no variation.');
  if (read.length > MOST_REPLICATES) return refuse(`Write at most ${MOST_REPLICATES} weights.`);
  return read;
});

export const SURFACES = ['ordinary', 'chaffy'] as const;

/** A balance step of 0 is not asked for: every balance rounds. */
const stepG = numberBetween({ min: 0.00001, max: 100 }, 'g');

/** Counted replicates and their weights; the other forms of the page work from them. */
export const seedWeightSchema = z
  .object({
    weights: replicateWeights,
    perReplicate: countBetween({ min: 1, max: 100_000 }, 'seeds'),
    weightStep: stepG,
    surface: optionalField(z.enum(SURFACES, 'Choose one of the list.')),
    seedCrop: cropName,
    weighedAt: optionalField(moisturePercent),
    wantedAt: optionalField(moisturePercent),
  })
  .refine(({ weighedAt, wantedAt }) => (weighedAt === undefined) === (wantedAt === undefined), {
    path: ['wantedAt'],
    message: 'Fill in both moistures, or none.',
  });

export const PACKET_LEVELS = ['80', '90', '95', '99'] as const;

/** A packet on the balance: how many seeds? */
export const packetSchema = z.object({
  packetGrams: positiveWeightG,
  packetStep: stepG,
  packetLevel: z.enum(PACKET_LEVELS, 'Choose one of the list.'),
});

/** Seeds wanted: how many grams? */
export const gramsSchema = z.object({
  seedsWanted: countBetween({ min: 1, max: SEED_COUNT.max }, 'seeds'),
  gramsStep: stepG,
  gramsAssurance: z.enum(PACKET_LEVELS, 'Choose one of the list.'),
});
