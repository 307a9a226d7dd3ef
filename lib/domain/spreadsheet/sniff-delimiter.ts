/**
 * Finds the mark that separates the cells. The right one splits the heading row and the rows below it into the same
 * number of cells; a decimal comma inside cells does not, because headings have none and whole numbers lack it.
 */
import { type Delimiter, scanRecords } from './scan-records';

// Where two marks fit equally well, the one that people write inside a cell less often is the separator.
const BY_RARITY_IN_TEXT: Delimiter[] = ['\t', ';', ','];
const RECORDS_LOOKED_AT = 200;
const CHARACTERS_LOOKED_AT = 400_000;

interface Fit {
  delimiter: Delimiter;
  agreement: number;
  width: number;
}

function fitOf(text: string, delimiter: Delimiter): Fit {
  const scanned = scanRecords(text, delimiter, RECORDS_LOOKED_AT);
  const widths = scanned.widths.filter((_, index) => !scanned.blank[index]);
  const heading = widths.find((width) => width > 1) ?? 1;
  const agreeing = widths.filter((width) => width === heading).length;
  // A wrong separator often shows as a quote closed in mid-cell: what was scanned till then counts for half.
  const trust = scanned.quoteProblem?.kind === 'text-behind' ? 0.5 : 1;
  const agreement = heading === 1 || widths.length === 0 ? 0 : (agreeing / widths.length) * trust;
  return { delimiter, agreement, width: heading };
}

/**
 * Chooses between tab, semicolon and comma.
 *
 * @param text  the decoded file; only its beginning is looked at
 * @returns the delimiter that gives the most records as wide as the first wide one; at equal agreement, tab before
 *   semicolon before comma; comma when the file has one column
 * Checked in tests/domain/spreadsheet/read-table.test.ts (layouts with decimal commas, quotes, ragged rows; round trip)
 */
export function sniffDelimiter(text: string): Delimiter {
  // Cutting inside a quoted cell is harmless here: it only shortens what is scanned.
  const beginning = text.slice(0, CHARACTERS_LOOKED_AT);
  let best: Fit = { delimiter: ',', agreement: 0, width: 1 };
  for (const delimiter of BY_RARITY_IN_TEXT) {
    const fit = fitOf(beginning, delimiter);
    if (fit.agreement > best.agreement) best = fit;
  }
  return best.delimiter;
}
