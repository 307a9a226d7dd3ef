/**
 * What may be recorded of a tetrazolium or cut test: the lot, the day, which seed was used up, and what it was found to be.
 * A correction is a whole new test that names the one it corrects; the old one stays as it was written.
 */
import { z } from 'zod';
import {
  ALL_VIABILITY_CLASSES,
  VIABILITY_CLASSES,
  VIABILITY_KINDS,
  type ViabilityClass,
} from '../domain/germination/dormancy/viability-kinds';
import { choice, tickBox } from './choice-field';
import {
  blankToUndefined,
  countBetween,
  longText,
  lotNumber,
  optionalField,
  pastOrTodayDate,
  shortText,
} from './field-schemas';
import { SHORT_TEXT_LENGTH } from './limits';

/** seeds of one class; nobody stains or cuts more by hand, and a slip of the keyboard makes more */
const CLASS_SEEDS = { min: 0, max: 5_000 } as const;

const recordId = z.string().max(64, 'This does not name anything in the collection.');
const classCount = optionalField(countBetween(CLASS_SEEDS, 'seeds'));

/** The class that counts as alive must be said, 0 if there was none: left blank it is forgotten, not 0. */
const MUST_BE_SAID: Partial<Record<ViabilityClass, string>> = {
  stainedNormally: 'Write how many stained as they should, 0 if none did.',
  firm: 'Write how many were full and firm, 0 if none was.',
};

/**
 * Input of a tetrazolium or cut test, as a form or a program sends it.
 *
 * @param today  'YYYY-MM-DD' at the bank; the test may not lie after it
 * @returns a schema. `counts` holds every class: those of the other kind are null, others left blank are 0. Of the ways in
 *          which seed is named one comes through: the tray whose left-over seed it was, else seed taken out before, else
 *          the packet. `takes`: whether the seed is to be taken out of that packet's ledger now
 * @throws RangeError when today is not a calendar date
 * Checked in tests/schemas/viability-test.test.ts
 */
export const viabilityTestInput = (today: string) =>
  z
    .object({
      lot: lotNumber,
      kind: choice(VIABILITY_KINDS, 'test'),
      testedOn: pastOrTodayDate(today),
      /** the germination test whose seed left over was examined */
      trayId: optionalField(recordId),
      packetId: optionalField(recordId),
      /** whether the seed is to be taken out of that packet's ledger */
      takeSeed: tickBox,
      /** the ledger's line by which the seed was taken out before */
      withdrawalId: optionalField(recordId),
      stainedNormally: classCount,
      stainedAbnormally: classCount,
      unstained: classCount,
      firm: classCount,
      empty: classCount,
      insectDamaged: classCount,
      dead: classCount,
      /** strength, hours, temperature, how it was opened */
      method: optionalField(shortText),
      notes: optionalField(longText),
      correctsId: optionalField(recordId),
      correctionReason: optionalField(shortText),
    })
    .transform(({ takeSeed, withdrawalId, packetId, trayId, ...input }, context) => {
      const refuse = (field: string, message: string) => context.addIssue({ code: 'custom', path: [field], message });
      const { counts, seeds } = countsOf(input, refuse);
      if (input.correctsId && !input.correctionReason) {
        refuse('correctionReason', 'Say what was wrong with the test as first written.');
      }
      // A correction's seed went out the first time.
      const fromPacket = !trayId && !input.correctsId;
      const takes = fromPacket && takeSeed && !withdrawalId;
      if (takes && !packetId) refuse('packetId', 'Choose the packet from which the seed was taken.');
      const { lot, kind, testedOn, method, notes, correctsId, correctionReason } = input;
      return {
        ...{ lot, kind, testedOn, method, notes, correctsId, correctionReason },
        ...{ counts, seeds, trayId, takes },
        packetId: trayId ? undefined : packetId,
        withdrawalId: fromPacket ? withdrawalId : undefined,
      };
    });

export type ViabilityTestInput = z.output<ReturnType<typeof viabilityTestInput>>;

type Counts = Record<ViabilityClass, number | null>;

function countsOf(
  input: { kind: (typeof VIABILITY_KINDS)[number] } & Partial<Record<ViabilityClass, number>>,
  refuse: (field: string, message: string) => void,
): { counts: Counts; seeds: number } {
  const classes: readonly ViabilityClass[] = VIABILITY_CLASSES[input.kind];
  const counts = Object.fromEntries(
    ALL_VIABILITY_CLASSES.map((name) => [name, classes.includes(name) ? (input[name] ?? 0) : null]),
  ) as Counts;
  const seeds = classes.reduce((sum, name) => sum + (counts[name] ?? 0), 0);
  const [first] = classes;
  if (first && input[first] === undefined) refuse(first, MUST_BE_SAID[first] ?? 'Write how many, 0 if none.');
  else if (first && seeds === 0) refuse(first, 'Write what was found: the classes must add to at least 1 seed.');
  return { counts, seeds };
}

const first = (value: unknown) => (Array.isArray(value) ? value[0] : value);
const shortCode = z.preprocess(first, z.string().trim().max(SHORT_TEXT_LENGTH.max)).optional().catch(undefined);

/** The address of the entry form: what cannot be read is left out. */
export const newViabilityTestQuery = z.object({
  lot: shortCode,
  kind: z.preprocess((value) => blankToUndefined(first(value)), z.enum(VIABILITY_KINDS)).catch('tetrazolium'),
  /** number of the germination test whose seed left over was examined */
  tray: shortCode,
});

/** The address of the list. */
export const viabilityListQuery = z.object({
  page: z.preprocess(first, z.coerce.number().int().min(1).max(100_000)).catch(1),
});
