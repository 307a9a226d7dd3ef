/** Input of the commands that write down, settle and close the counts of a tray. */
import { z } from 'zod';
import { choice, idOf, tickBox } from './choice-field';
import { blankToUndefined, calendarDate, optionalField, pastOrTodayDate, seedCount, shortText } from './field-schemas';

const noneWhenBlank = optionalField(seedCount).transform((seeds) => seeds ?? 0);

const foundInDish = z.object({
  normal: noneWhenBlank,
  abnormal: noneWhenBlank,
  hard: noneWhenBlank,
  fresh: noneWhenBlank,
  dead: noneWhenBlank,
});

/** A row in which nothing was written says that the dish was not counted; a 0 says that nothing was found. */
const dishRow = z.preprocess((row) => {
  if (typeof row !== 'object' || row === null) return null;
  return Object.values(row).every((value) => blankToUndefined(value) === undefined) ? null : row;
}, foundInDish.nullable());

/** Ids of the counts that the form was opened on: whatever was written since is shown before it is replaced. */
const seenCounts = z.string().max(20_000).default('');

/**
 * What was found in a tray on one day, dish by dish, as the laptop's form sends it.
 *
 * @param today  'YYYY-MM-DD' at the bank; the day of the count may not lie after it
 * Checked in tests/server/commands/write-tray-counts.test.ts
 */
export function writeTrayCountsInput(today: string) {
  return z.object({
    trayId: idOf('tray'),
    on: pastOrTodayDate(today),
    version: seenCounts,
    /** who stood at the bench, when it was somebody else */
    countedBy: optionalField(shortText),
    /** whatever still lies in the dishes is dead: the final count */
    restDead: tickBox,
    /** by dish id */
    dishes: z.record(z.string().max(100), dishRow).default({}),
  });
}

/** Which of the counts that disagree holds. */
export const SETTLE_CHOICES = ['one', 'both', 'other'] as const;

/** 'both': they were made one after the other, so they add up; 'other': neither, but what is written in the boxes */
export const settleCountSchema = z
  .object({
    trayId: idOf('tray'),
    dishId: idOf('dish'),
    on: calendarDate,
    version: seenCounts,
    /** 'one <id of the count>', 'both' or 'other' */
    settle: z.preprocess(blankToUndefined, z.string({ error: 'Choose which count holds.' }).max(120)),
    other: dishRow.optional(),
  })
  .transform(({ settle, other, ...input }, context) => {
    const [kind, countId = ''] = settle.split(' ');
    const known = choice(SETTLE_CHOICES, 'count that holds').safeParse(kind);
    if (!known.success) {
      context.addIssue({ code: 'custom', path: ['settle'], message: 'Choose which count holds.' });
      return z.NEVER;
    }
    if (known.data === 'other' && !other) {
      context.addIssue({ code: 'custom', path: ['other.normal'], message: 'Write what was found, 0 if nothing was.' });
      return z.NEVER;
    }
    return { ...input, kind: known.data, countId, other: other ?? null };
  });

export const closeTraySchema = z.object({
  trayId: idOf('tray'),
  /** ticked by somebody who knows that the test written down by hand is another one */
  anotherTest: tickBox,
});

export const reopenTraySchema = z.object({
  trayId: idOf('tray'),
  reason: z.preprocess(
    blankToUndefined,
    z
      .string({ error: 'Say why it must be opened again: others will ask.' })
      .max(200, 'Shorten this to 200 characters.'),
  ),
});
