import { LONG_TEXT_LENGTH } from '../limits';
import { isolationFromWords } from './choice-words';
import { type CountNote, codeKey, createNameFinder, type ImportContext, type KindCheck } from './import-context';
import type { LotRecord, ReadCells } from './records';

// Weight, thousand-seed weight and count of one lot rarely agree to the seed; beyond this they tell different stories.
const LARGEST_STOCK_DISAGREEMENT = 0.25;

const sameNumbers = (numbers: readonly string[]) => new Map(numbers.map((number) => [codeKey(number), number]));

function stockDisagrees({ cleanWeightG, thousandSeedWeightG, seedCount }: Partial<ReadCells<'lots'>>): boolean {
  if (cleanWeightG === undefined || thousandSeedWeightG === undefined || seedCount === undefined) return false;
  const fromWeight = (cleanWeightG / thousandSeedWeightG) * 1000;
  return Math.abs(fromWeight - seedCount) > LARGEST_STOCK_DISAGREEMENT * Math.max(fromWeight, seedCount);
}

/**
 * Checks of a table of lots that go beyond single cells: known accessions, numbers taken, order of dates, stores.
 *
 * @param context  the collection
 * @param note     says a note once, with the lines it is about
 * @returns the check of one row, and the stores to offer for creation
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function createLotCheck(context: ImportContext, note: CountNote): KindCheck<'lots', LotRecord> {
  const accessions = sameNumbers(context.accessionNumbers);
  const kept = new Set(context.lotNumbers.map(codeKey));
  const lineOf = new Map<string, number>();
  const lineOfUnnumbered = new Map<string, number>();
  const stores = createNameFinder(context.stores.map((name) => ({ name, synonyms: [] })));

  return {
    checkRow(row) {
      const { number, accessionNumber, harvestedOn, packedOn, store } = row.cells;
      const accession = accessionNumber === undefined ? undefined : accessions.get(codeKey(accessionNumber));
      if (accessionNumber !== undefined && accession === undefined) {
        row.refuse(
          'accessionNumber',
          `There is no accession ${accessionNumber}: correct the number, or import accessions first.`,
        );
      }
      if (number !== undefined) {
        const key = codeKey(number);
        const earlier = lineOf.get(key);
        if (kept.has(key)) {
          row.refuse(
            'number',
            `The collection already has a lot ${number}: leave this line out or give another number.`,
          );
        } else if (earlier !== undefined) {
          row.refuse('number', `Lot ${number} is already on line ${earlier}: give each lot its own number.`);
        } else lineOf.set(key, row.line);
      }
      const wholeDates = row.precision.harvestedOn === 'day' && row.precision.packedOn === 'day';
      if (wholeDates && harvestedOn !== undefined && packedOn !== undefined && packedOn < harvestedOn) {
        row.refuse('packedOn', `This is before the harvest (${harvestedOn}): check both dates.`);
      }
      if (row.hasProblem() || accession === undefined) return null;
      // Every required cell has passed its schema, or the row would have a problem.
      const cells = row.cells as ReadCells<'lots'>;

      if (number === undefined) {
        const identity = JSON.stringify([accession, cells]);
        const earlier = lineOfUnnumbered.get(identity);
        if (earlier !== undefined) {
          row.refuse('number', `This line repeats line ${earlier}: leave it out, or give both lots a number.`);
          return null;
        }
        lineOfUnnumbered.set(identity, row.line);
        note('Lots without a number get one on import.', row.line);
      }
      if (row.precision.harvestedOn !== 'day') {
        note('Harvest dates given as a year are kept as 1 July, as a month as the 15th.', row.line);
      }
      if (cells.cleanWeightG === undefined && cells.seedCount === undefined) {
        note('Neither weight nor seed count is given, or they are 0: these lots come in without stock.', row.line);
      }
      if (stockDisagrees(cells)) {
        note(
          'Weight, thousand-seed weight and seed count do not agree (more than a quarter apart): check them.',
          row.line,
        );
      }

      const isolationText = row.textOf('isolation');
      let { isolation, notes } = cells;
      isolation ??= 'unknown';
      if (isolationText !== '' && isolationFromWords(isolationText) === null) {
        note(
          `Isolation '${isolationText}' was not understood and is kept as not known; the words go to the lot's notes.`,
          row.line,
        );
        notes = [notes, `Isolation: ${isolationText}`].filter(Boolean).join('\n').slice(0, LONG_TEXT_LENGTH.max);
      }
      return {
        ...cells,
        line: row.line,
        accessionNumber: accession,
        isolation,
        notes,
        store: store === undefined ? undefined : stores.find(store).name,
        harvestedPrecision: row.precision.harvestedOn ?? 'day',
        packedPrecision: row.precision.packedOn ?? null,
      };
    },
    newCrops: () => [],
    newStores: stores.added,
  };
}
