/** Seed weight and number: what the forms of its calculator are asked. */
import { z } from 'zod';
import {
  countBetween,
  formNumber,
  moisturePercent,
  optionalField,
  positiveSeedCount,
  positiveWeightG,
  textUpTo,
} from '../field-schemas';
import { WEIGHT_G } from '../limits';
import { listedWords } from '../number-list';
import { cropName } from './crop-oil';
import { allOrNone } from './parts-agree';
import { balanceStepG, level, oneOf } from './question-parts';
import { type Read, readWith } from './written-lines';

/** Replicates that anybody weighs; the rule stops at 16. */
const MOST_REPLICATES = 64;

const refuse = (message: string) => ({ ok: false as const, message });

function readWeights(text: string): Read<number[]> {
  const words = listedWords(text).filter((word) => word !== 'g');
  const weights = words.map((word) => formNumber(word, 'g'));
  const wrong = words.find((_, i) => typeof weights[i] !== 'number');
  if (wrong !== undefined) return refuse(`"${wrong}" is not a weight: write grams, apart by spaces.`);
  const read = weights.filter((weight) => typeof weight === 'number');
  if (!read.every((weight) => weight >= WEIGHT_G.min && weight <= WEIGHT_G.max)) {
    return refuse(`Write grams between ${WEIGHT_G.min} and ${WEIGHT_G.max}.`);
  }
  if (read.length < 2) return refuse('Write at least two weights: one alone shows no variation.');
  if (read.length > MOST_REPLICATES) return refuse(`Write at most ${MOST_REPLICATES} weights.`);
  return { ok: true, value: read };
}

const replicateWeights = textUpTo(2_000).transform(readWith(readWeights));

const SURFACES = ['ordinary', 'chaffy'] as const;

/** Counted replicates and their weights; the other forms of the page work from them. */
export const seedWeightSchema = z
  .object({
    weights: replicateWeights,
    perReplicate: countBetween({ min: 1, max: 100_000 }, 'seeds'),
    weightStep: balanceStepG,
    surface: optionalField(oneOf(SURFACES)),
    seedCrop: cropName,
    weighedAt: optionalField(moisturePercent),
    wantedAt: optionalField(moisturePercent),
  })
  .refine(({ weighedAt, wantedAt }) => allOrNone(weighedAt, wantedAt), {
    path: ['wantedAt'],
    message: 'Fill in both moistures, or none.',
  });

/** A packet on the balance: how many seeds? */
export const packetSchema = z.object({
  packetGrams: positiveWeightG,
  packetStep: balanceStepG,
  packetLevel: level,
});

/** Seeds wanted: how many grams? */
export const gramsSchema = z.object({
  seedsWanted: positiveSeedCount,
  gramsStep: balanceStepG,
  gramsAssurance: level,
});
