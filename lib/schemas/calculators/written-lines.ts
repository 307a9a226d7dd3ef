/** Text of several lines in one field: what its readers have in common. */
import { z } from 'zod';

/** What a reader of text makes of it, or what is wrong in words for the field. */
export type Read<Value> = { ok: true; value: Value } | { ok: false; message: string };

/**
 * The lines of a text that hold anything.
 *
 * @param text  as typed or pasted, whatever its line ends
 * @returns each with its number in the text, from 1, by which messages name it
 * Checked in tests/schemas/written-lines.test.ts
 */
export function writtenLines(text: string): { line: string; number: number }[] {
  return text.split(/\r?\n/).flatMap((line, index) => (line.trim() === '' ? [] : [{ line, number: index + 1 }]));
}

/**
 * Makes a reader of text the last step of a field's schema.
 *
 * @param reader  gives the value or a message
 * @returns what z.string().transform takes
 * Checked in tests/schemas/written-lines.test.ts
 */
export function readWith<Value>(reader: (text: string) => Read<Value>) {
  return (text: string, context: { addIssue(message: string): void }): Value => {
    const read = reader(text);
    if (read.ok) return read.value;
    context.addIssue(read.message);
    return z.NEVER;
  };
}
