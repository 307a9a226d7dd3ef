import { lotCode } from './code-text';
import { germinationWords, harvestWords, type LabelledGermination, type LabelText, labelLines } from './label-text';

/** What is known of a bag of seed that is given away, and stands on its label. */
export interface LabelledBag {
  requestNumber: string;
  bankName: string;
  lotNumber: string;
  accessionName: string;
  cropName: string;
  /** 'YYYY-MM-DD' */
  harvestedOn: string;
  /** seeds in the bag, >= 1; null when the list does not say yet */
  seeds: number | null;
  /** what they weigh, null when the lot's thousand-seed weight is not known */
  grams: number | null;
  germination: LabelledGermination | null;
  /** seed treatment (fungicide and the like), null for untreated seed */
  treatment: string | null;
  /** shared on terms, which the pack list spells out */
  onTerms: boolean;
}

/**
 * The label of a bag that goes out: what the recipient must know of the seed, and nothing of where the bank keeps it. Its
 * code names the lot, so that the bag can still be told apart when its packet is long empty.
 *
 * The caution's words are those of 7 CFR 201.31a for treated seed, which also wants the substance named: it follows.
 *
 * @param bankAddress  where phones reach this bank, null when they do not
 * Checked in tests/domain/labels/bag-label.test.ts
 */
export function bagLabel(bag: LabelledBag, bankAddress: string | null): LabelText {
  const { germination, treatment } = bag;
  return {
    called: `the bag of ${bag.lotNumber}`,
    codeText: lotCode(bag.lotNumber, bankAddress),
    ...labelLines([
      ['name', bag.accessionName],
      ['lot number', bag.lotNumber],
      ['caution', treatment === null ? null : 'TREATED SEED: NOT FOR FOOD, FEED OR OIL'],
      ['treatment', treatment],
      ['terms', bag.onTerms ? 'on terms: see list' : null],
      ['crop', bag.cropName],
      ['harvest', harvestWords(bag.harvestedOn)],
      ['seeds', amountWords(bag.seeds, bag.grams)],
      ['germination', germination && germinationWords(germination)],
      ['request', `request ${bag.requestNumber}`],
      ['bank', bag.bankName],
    ]),
  };
}

function amountWords(seeds: number | null, grams: number | null): string | null {
  if (seeds === null) return null;
  const counted = `${seeds} ${seeds === 1 ? 'seed' : 'seeds'}`;
  return grams === null ? counted : `${counted} · ${grams} g`;
}
