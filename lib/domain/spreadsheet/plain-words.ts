/** Text brought to a bare form, so that 'Keimfähigkeit (%)' and 'keimfahigkeit %' compare equal. */

const ACCENTS = /\p{M}/gu;
const LETTERS: Record<string, string> = { ß: 'ss', ø: 'o', æ: 'ae', œ: 'oe', ł: 'l', đ: 'd' };

/**
 * Lower-case words without accents and punctuation, with one space between them.
 *
 * @param text  any text
 * @returns letters and digits only; '%' becomes 'percent' and '#', 'nº', '№' become 'no'
 * Checked in tests/domain/spreadsheet/plain-words.test.ts
 */
export function plainWords(text: string): string {
  return text
    .normalize('NFD')
    .replace(ACCENTS, '')
    .toLowerCase()
    .replace(/[ßøæœłđ]/g, (letter) => LETTERS[letter] ?? letter)
    .replace(/%/g, ' percent ')
    .replace(/№|#|n[º°]/g, ' no ')
    .replace(/[^\p{L}\p{N}]+/gu, ' ')
    .trim();
}
