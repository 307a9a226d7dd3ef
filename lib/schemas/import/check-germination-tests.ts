import { type CountNote, codeKey, type ImportContext, type KindCheck, type ReadRow } from './import-context';
import type { GerminationTestRecord, ReadCells, ReplicateRecord } from './records';

type Row = ReadRow<'germination tests'>;

// Up to this share of one seed, a percentage is taken to be the count's own, rounded to whole or tenths of percent.
const ROUNDING_SLACK_PERCENT = 0.5;

/** Seeds germinated, from the count or else from the percentage; undefined when the row has a problem with it. */
function germinatedOf(row: Row, seedsSown: number, note: CountNote): number | undefined {
  const { germinated, germinationPercent } = row.cells;
  if (germinated !== undefined) {
    if (germinated > seedsSown) {
      row.refuse(
        'germinated',
        `More seeds germinated (${germinated}) than were sown (${seedsSown}): check both, or map this column to Germination (%).`,
      );
      return undefined;
    }
    if (germinationPercent !== undefined && Math.abs((germinated / seedsSown) * 100 - germinationPercent) > 1) {
      row.refuse(
        'germinationPercent',
        `${germinated} of ${seedsSown} seeds is not ${germinationPercent} %: correct one of them.`,
      );
      return undefined;
    }
    return germinated;
  }
  if (germinationPercent === undefined) {
    row.refuse('germinated', 'Fill in how many seeds germinated, or the germination percentage.');
    return undefined;
  }
  if (germinationPercent > 0 && germinationPercent < 1) {
    row.refuse(
      'germinationPercent',
      'This is less than 1 %: write 92 for 92 %, or give the number of seeds germinated.',
    );
    return undefined;
  }
  const exact = (germinationPercent / 100) * seedsSown;
  const rounded = Math.round(exact);
  if (Math.abs((rounded / seedsSown) * 100 - germinationPercent) > ROUNDING_SLACK_PERCENT) {
    note(
      'The percentage is not that of a whole number of the seeds sown; the nearest count was taken: check seeds sown.',
      row.line,
    );
  }
  note('Seeds germinated were worked out from percentage and seeds sown, rounded to whole seeds.', row.line);
  return rounded;
}

/** All seeds of the test as one replicate whose classes add up; null when they cannot. */
function replicateOf(row: Row, note: CountNote): ReplicateRecord | null {
  const { seedsSown, abnormal, hard, fresh, dead } = row.cells;
  if (seedsSown === undefined) return null;
  const normal = germinatedOf(row, seedsSown, note);
  if (normal === undefined) return null;
  const others = { abnormal: abnormal ?? 0, hard: hard ?? 0, fresh: fresh ?? 0 };
  const classed = normal + others.abnormal + others.hard + others.fresh + (dead ?? 0);
  if (classed > seedsSown) {
    row.refuse('seedsSown', `The counts add up to ${classed}, more than the ${seedsSown} seeds sown: check them.`);
    return null;
  }
  if (dead !== undefined && classed < seedsSown) {
    row.refuse('dead', `The counts add up to ${classed} of ${seedsSown} seeds sown: say what became of the others.`);
    return null;
  }
  if (dead === undefined && classed < seedsSown) {
    note('Seeds that the file does not account for were counted as dead.', row.line);
  }
  return { seeds: seedsSown, normal, ...others, dead: dead ?? seedsSown - classed };
}

/**
 * Checks of a table of germination tests that go beyond single cells: known lots, counts that add up, repeats.
 *
 * @param context  the collection
 * @param note     says a note once, with the lines it is about
 * @returns the check of one row
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function createGerminationTestCheck(
  context: ImportContext,
  note: CountNote,
): KindCheck<'germination tests', GerminationTestRecord> {
  const lots = new Map(context.lotNumbers.map((number) => [codeKey(number), number]));
  const kept = new Set((context.tests ?? []).map(({ lotNumber, setOn }) => `${codeKey(lotNumber)} ${setOn}`));
  const lineOf = new Map<string, number>();

  return {
    checkRow(row) {
      const { lotNumber, setOn, closedOn } = row.cells;
      const lot = lotNumber === undefined ? undefined : lots.get(codeKey(lotNumber));
      if (lotNumber !== undefined && lot === undefined) {
        row.refuse('lotNumber', `There is no lot ${lotNumber}: correct the number, or import lots first.`);
      }
      const wholeDates = row.precision.setOn === 'day' && row.precision.closedOn === 'day';
      if (wholeDates && setOn !== undefined && closedOn !== undefined && closedOn < setOn) {
        row.refuse('closedOn', `This is before the test was set (${setOn}): check both dates.`);
      }
      const replicate = replicateOf(row, note);
      if (row.hasProblem() || lot === undefined || setOn === undefined || replicate === null) return null;

      const whichTest = `${codeKey(lot)} ${setOn}`;
      if (kept.has(whichTest)) {
        row.refuse('setOn', `The collection already has a test of lot ${lot} set on ${setOn}: leave this line out.`);
        return null;
      }
      // Two tests of a lot may start on one day; the same counts as well make it a repeat.
      const identity = JSON.stringify([whichTest, replicate]);
      const earlier = lineOf.get(identity);
      if (earlier !== undefined) {
        row.refuse('lotNumber', `This line repeats line ${earlier} (same lot, date and counts): leave it out.`);
        return null;
      }
      lineOf.set(identity, row.line);

      note(
        'Only totals are given, so each test is kept as one replicate: how well replicates agreed cannot be judged.',
        row.line,
      );
      if (closedOn === undefined) note('No closing date is given: the set-on date stands for it.', row.line);
      if (row.precision.setOn !== 'day')
        note('Test dates given as a year are kept as 1 July, as a month as the 15th.', row.line);
      const { method, notes, replicates } = row.cells as ReadCells<'germination tests'>;
      return {
        line: row.line,
        lotNumber: lot,
        setOn,
        setPrecision: row.precision.setOn ?? 'day',
        // A month or year kept at its middle may pass a closing day inside it.
        closedOn: closedOn === undefined || closedOn < setOn ? setOn : closedOn,
        replicates: [replicate],
        replicatesSet: replicates ?? row.replicates,
        method,
        notes,
      };
    },
    newCrops: () => [],
    newStores: () => [],
  };
}
