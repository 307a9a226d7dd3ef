import { editDistance } from '../../domain/spreadsheet/edit-distance';
import { plainWords } from '../../domain/spreadsheet/plain-words';
import { type CountNote, codeKey, createNameFinder, type ImportContext, type KindCheck } from './import-context';
import type { AccessionRecord, ReadCells } from './records';

/**
 * Checks of a table of accessions that go beyond single cells: numbers taken, crops not yet kept.
 *
 * @param context  the collection
 * @param note     says a note once, with the lines it is about
 * @returns the check of one row, and the crops to offer for creation
 * Checked in tests/schemas/import/dry-run.test.ts
 */
export function createAccessionCheck(
  context: ImportContext,
  note: CountNote,
): KindCheck<'accessions', AccessionRecord> {
  const kept = new Set(context.accessionNumbers.map(codeKey));
  const lineOf = new Map<string, number>();
  const crops = createNameFinder(context.crops);
  const cropNames = context.crops.flatMap(({ name, synonyms }) =>
    [name, ...synonyms].map((word) => ({ name, plain: plainWords(word) })),
  );
  const resembles = new Map<string, string | null>();

  function similarCrop(text: string): string | null {
    const word = plainWords(text);
    if (!resembles.has(word)) {
      const slips = word.length >= 8 ? 2 : word.length >= 4 ? 1 : 0;
      const similar = slips > 0 && cropNames.find(({ plain }) => editDistance(word, plain, slips) <= slips);
      resembles.set(word, similar ? similar.name : null);
    }
    return resembles.get(word) ?? null;
  }

  return {
    checkRow(row) {
      const { number, crop } = row.cells;
      if (number !== undefined) {
        const key = codeKey(number);
        const earlier = lineOf.get(key);
        if (kept.has(key)) {
          row.refuse(
            'number',
            `The collection already has an accession ${number}: leave this line out or give another number.`,
          );
        } else if (earlier !== undefined) {
          row.refuse(
            'number',
            `Accession ${number} is already on line ${earlier}: give each accession its own number.`,
          );
        } else lineOf.set(key, row.line);
      }
      if (row.hasProblem() || crop === undefined) return null;
      // Every required cell has passed its schema, or the row would have a problem.
      const cells = row.cells as ReadCells<'accessions'>;
      const found = crops.find(crop);
      if (found.isNew) {
        const similar = similarCrop(crop);
        if (similar)
          note(
            `'${crop}' is not yet a crop here. If ${similar} is meant, correct the name before importing.`,
            row.line,
          );
      }
      return { ...cells, line: row.line, crop: found.name, acquiredPrecision: row.precision.acquiredOn ?? null };
    },
    newCrops: crops.added,
    newStores: () => [],
  };
}
