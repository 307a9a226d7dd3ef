/** Input of the commands of a stock-take. */
import { z } from 'zod';
import { STOCK_TAKE_DECISIONS } from '../domain/stock/stock-take-difference';
import { choice, idOf, tickBox, versionField } from './choice-field';
import { blankToUndefined, formNumber, longText, optionalField, positiveWeightG, seedCount } from './field-schemas';
import { AMOUNT_UNITS } from './seed-amount';

export const startStockTakeSchema = z.object({
  storeId: idOf('store'),
  notes: optionalField(longText),
});

/**
 * What was found of a packet. An amount needs its unit; none means that it was only ticked.
 * `version` is that of the line as the person saw it; 0 when there was none.
 */
export const recordStockTakeLineSchema = z
  .object({
    stockTakeId: idOf('stock-take'),
    packetId: idOf('packet'),
    finding: choice(['here', 'not-here'], 'finding'),
    amount: z.preprocess((value) => formNumber(value), z.unknown()),
    unit: z.preprocess(blankToUndefined, z.enum(AMOUNT_UNITS, { error: 'Choose the unit.' }).optional()),
    version: z.coerce.number().int().min(0),
  })
  .transform((input, context) => {
    const { amount: written, unit, ...line } = input;
    if (blankToUndefined(written) === undefined || line.finding === 'not-here') return { ...line, amount: null };
    if (unit === undefined) {
      context.addIssue({ code: 'custom', path: ['unit'], message: 'Choose seeds or grams.' });
      return z.NEVER;
    }
    const amount = (unit === 'seeds' ? seedCount : positiveWeightG).safeParse(written);
    if (amount.success) return { ...line, amount: { [unit]: amount.data } as { seeds: number } | { grams: number } };
    context.addIssue({ code: 'custom', path: ['amount'], message: amount.error.issues[0]?.message ?? 'Fill this in.' });
    return z.NEVER;
  });

export const removeStockTakeLineSchema = z.object({
  stockTakeId: idOf('stock-take'),
  packetId: idOf('packet'),
  version: versionField,
});

/** By the line that they are about: the boxes of a form stay with their lines, whatever is counted meanwhile. */
const decisions = z
  .record(
    z.string().max(100),
    z.object({
      /** of the line as it was reviewed */
      version: versionField,
      decision: optionalField(choice(STOCK_TAKE_DECISIONS, 'decision')),
    }),
  )
  .optional()
  .transform((rows) => rows ?? {});

/** Decisions kept for later: the stock-take stays open. */
export const saveStockTakeDecisionsSchema = z.object({ stockTakeId: idOf('stock-take'), decisions });

export const closeStockTakeSchema = saveStockTakeDecisionsSchema.extend({
  /** ticked by somebody who knows that some packets were not looked at */
  closeUnfinished: tickBox,
});

export const giveUpStockTakeSchema = z.object({ stockTakeId: idOf('stock-take') });

const AMOUNT = /^(\d[\d\s.,'’]*?)\s*(g|gr?ams?|seeds?)?$/i;

/**
 * What was typed or scanned into the one field of a stock-take: an amount of the packet in hand, or else a code.
 *
 * @param typed  '1240', '1 240 seeds', '3,1 g', 'P-00012', an address
 * @returns a whole number alone counts as seeds; with a unit as what it says
 * Checked in tests/schemas/stock-take.test.ts
 */
export function readStockTakeEntry(
  typed: string,
): { kind: 'amount'; amount: string; unit: 'seeds' | 'grams' } | { kind: 'code'; text: string } {
  const text = typed.trim();
  const [, amount, unit] = AMOUNT.exec(text) ?? [];
  if (amount === undefined) return { kind: 'code', text };
  return { kind: 'amount', amount, unit: unit?.toLowerCase().startsWith('g') ? 'grams' : 'seeds' };
}
