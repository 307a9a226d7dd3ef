import { z } from 'zod';
import { numberReadings } from '../domain/spreadsheet/number-format';
import { blankToUndefined } from './field-schemas';

/** Between numbers: a new line, a semicolon, a blank, or a comma followed by a blank. A comma inside digits is a decimal mark. */
const BETWEEN = /[\s;]+|,\s+/;

/**
 * Takes a list apart without reading it.
 *
 * @param text  '46, 44, 49' or '12,5; 10,2' or a line each
 * @returns the words in order, none of them empty
 * Checked in tests/schemas/number-list.test.ts
 */
export function listedWords(text: string): string[] {
  return text.split(BETWEEN).filter((word) => word !== '');
}

/**
 * Several numbers in one field: '46, 44, 49' or '46 44 49' or '12,5; 10,2'.
 *
 * @param limits.min, limits.max    bounds of each number, in the field's own unit
 * @param limits.most               most numbers taken
 * @param things                    what the numbers are, in the plural, as said in messages: 'weights'
 * @param whole                     only whole numbers
 * @returns a schema giving the numbers, at least one
 * Checked in tests/schemas/number-list.test.ts
 */
export function numberList(limits: { min: number; max: number; most: number }, things: string, whole = false) {
  return z.preprocess(
    blankToUndefined,
    z
      .string({ error: (issue) => (issue.input === undefined ? 'Fill this in.' : 'Write numbers here.') })
      .transform((text, context) => {
        const words = listedWords(text);
        const refuse = (message: string) => {
          context.addIssue(message);
          return z.NEVER;
        };
        if (words.length > limits.most) return refuse(`Write at most ${limits.most} ${things}.`);
        const numbers: number[] = [];
        for (const word of words) {
          const value = numberReadings(word).find(({ unit }) => unit === null)?.value;
          if (value === undefined)
            return refuse(`'${word}' is not a number: put a blank or a semicolon between ${things}.`);
          if (!(value >= limits.min && value <= limits.max)) {
            return refuse(`'${word}' is out of range: write ${things} between ${limits.min} and ${limits.max}.`);
          }
          if (whole && !Number.isInteger(value)) return refuse(`'${word}' is not whole: write whole numbers.`);
          numbers.push(value);
        }
        return numbers;
      }),
  );
}
