/**
 * Which column of a steward's table holds which field. Headings decide: exactly, with other words around, or with a
 * slip of the pen. What the cells look like then raises or lowers the guess; it never makes one by itself, because a
 * column of numbers could be anything.
 */
import { type ColumnKind, shareThatFits } from './column-kind';
import { editDistance } from './edit-distance';
import { plainWords } from './plain-words';

export interface ColumnField {
  key: string;
  /** the field's name on screen */
  label: string;
  required: boolean;
  kind: ColumnKind;
  /** other headings that mean this field, in any language */
  synonyms: readonly string[];
}

/** For each field the index of its column, or null. */
export type ColumnMapping = Record<string, number | null>;

export interface GuessedColumns {
  mapping: ColumnMapping;
  /** how sure each guess is, 0-1; 0 where there is none */
  confidence: Record<string, number>;
  /** indexes of columns with a heading that no field took */
  unused: number[];
}

// Below this a guess is more often wrong than right; the steward chooses instead.
const LEAST_CONFIDENCE = 0.45;
const ROWS_LOOKED_AT = 200;
const ORDER_WEIGHT = 0.0002;
// Words that say nothing about which field it is.
const FILLERS = new Set(
  'g gr gram grams in of the a an per date number no nr num percent pct value total our de des du la le der die das von en del any'.split(
    ' ',
  ),
);

function headingScore(heading: string, synonym: string): number {
  if (heading === synonym) return 1;
  const [joined, wanted] = [heading.replaceAll(' ', ''), synonym.replaceAll(' ', '')];
  if (joined === wanted) return 0.98;
  const words = heading.split(' ');
  const synonymWords = synonym.split(' ');
  if (wanted.length >= 3 && synonymWords.every((word) => words.includes(word))) {
    const others = words.filter((word) => !synonymWords.includes(word) && !FILLERS.has(word));
    if (others.length === 0) return 0.9;
    return 0.5 + 0.3 * (synonymWords.length / (synonymWords.length + others.length));
  }
  const slips = wanted.length >= 9 ? 2 : wanted.length >= 5 ? 1 : 0;
  if (slips > 0) {
    const distance = editDistance(joined, wanted, slips);
    if (distance <= slips) return distance === 1 ? 0.85 : 0.75;
  }
  return 0;
}

function contentFactor(share: number | null): number {
  if (share === null) return 0.9;
  return share >= 0.5 ? 0.8 + 0.2 * share : 0.5;
}

/**
 * Guesses the mapping from columns to fields.
 *
 * @param header      the table's headings
 * @param sampleRows  some rows of cells; the first 200 are looked at
 * @param fields      the fields to find, earlier ones first at equal scores
 * @returns for each field a column or null, with confidence 0-1; no column is given to two fields
 * Checked in tests/domain/spreadsheet/guess-columns.test.ts
 */
export function guessColumns(
  header: readonly string[],
  sampleRows: readonly (readonly string[])[],
  fields: readonly ColumnField[],
): GuessedColumns {
  const headings = header.map(plainWords);
  const rows = sampleRows.slice(0, ROWS_LOOKED_AT);
  const columns = header.map((_, column) => rows.map((row) => row[column] ?? ''));
  const shares = new Map<string, number | null>();
  const shareOf = (column: number, kind: ColumnKind) => {
    const key = `${column} ${kind}`;
    if (!shares.has(key)) shares.set(key, shareThatFits(columns[column] ?? [], kind));
    return shares.get(key) ?? null;
  };

  const guesses: { key: string; column: number; score: number }[] = [];
  for (const field of fields) {
    const synonyms = [...new Set([field.label, ...field.synonyms].map(plainWords))];
    headings.forEach((heading, column) => {
      if (heading === '') return;
      // Of several columns that fit, the one with the more usual heading: the label first, then synonyms in their order.
      const byHeading = synonyms.reduce(
        (best, synonym, order) => Math.max(best, headingScore(heading, synonym) * (1 - order * ORDER_WEIGHT)),
        0,
      );
      if (byHeading === 0) return;
      const score = byHeading * contentFactor(shareOf(column, field.kind));
      if (score >= LEAST_CONFIDENCE) guesses.push({ key: field.key, column, score });
    });
  }

  // Best guess first; sort is stable, so equal scores keep the order of fields, then of columns.
  guesses.sort((a, b) => b.score - a.score);
  const mapping: ColumnMapping = Object.fromEntries(fields.map((field) => [field.key, null]));
  const confidence = Object.fromEntries(fields.map((field) => [field.key, 0]));
  const taken = new Set<number>();
  for (const { key, column, score } of guesses) {
    if (mapping[key] !== null || taken.has(column)) continue;
    mapping[key] = column;
    confidence[key] = score;
    taken.add(column);
  }
  const unused = headings.flatMap((heading, column) => (heading !== '' && !taken.has(column) ? [column] : []));
  return { mapping, confidence, unused };
}
