/** Names of months as stewards write them, in English and in the languages of common old tables. */

// Every spelling is lower case without accents; no name stands for different months in two of the languages.
const SPELLINGS = [
  'jan january januar janner jaenner janvier janv ene enero',
  'feb february februar fevrier fev fevr febrero febr',
  'mar march marz maerz mrz mars marzo',
  'apr april avril avr abr abril',
  'may mai mayo',
  'jun june juni juin junio',
  'jul july juli juillet juil julio',
  'aug august aout ago agosto',
  'sep sept september septembre septiembre set setiembre',
  'oct october okt oktober octobre octubre',
  'nov november novembre noviembre',
  'dec december dez dezember decembre dic diciembre',
];

const MONTHS = new Map(SPELLINGS.flatMap((line, index) => line.split(' ').map((name) => [name, index + 1] as const)));

/**
 * The month that a word names.
 *
 * @param word  a word in any case, with or without accents and a full stop ('Mar', 'märz', 'Déc.')
 * @returns 1-12, or null when it names no month
 * Checked in tests/domain/spreadsheet/date-format.test.ts
 */
export function monthFromName(word: string): number | null {
  const plain = word.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/\.$/, '');
  return MONTHS.get(plain) ?? null;
}
