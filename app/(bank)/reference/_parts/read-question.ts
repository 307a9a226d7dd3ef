import type { z } from 'zod';

export type Address = Record<string, string | string[] | undefined>;

/** What a calculator was asked, read from its address: so that a link carries the question. */
export interface Question<Input> {
  /** names of its fields */
  fields: readonly string[];
  /** every parameter of the address, to be kept by the other forms of the page */
  address: Record<string, string>;
  /** what stands in the fields: as typed, or the example where nothing was asked */
  typed: Record<string, string>;
  /** what is wrong with a field, by its name */
  errors: Record<string, string>;
  /** null when a field is wrong */
  input: Input | null;
  /** nothing was asked: the figures are those of the example */
  isExample: boolean;
}

/**
 * Reads a question from an address.
 *
 * @param schema   reads the fields; an object schema, one key a field
 * @param address  the page's searchParams; of a parameter given twice the first counts
 * @param example  shown and worked out when the address has none of the schema's fields
 * @returns the question; never throws, whatever the address holds
 * Checked in tests/app/read-question.test.ts
 */
export function readQuestion<Shape extends z.ZodRawShape>(
  schema: z.ZodObject<Shape>,
  address: Address,
  example: { [Field in keyof Shape]?: string },
): Question<z.infer<z.ZodObject<Shape>>> {
  const single = firstOfEach(address);
  const fields = Object.keys(schema.shape);
  const isExample = !fields.some((field) => single[field] !== undefined);
  const source = isExample ? (example as Record<string, string>) : single;
  const typed = Object.fromEntries(
    fields.flatMap((field) => (source[field] === undefined ? [] : [[field, source[field]]])),
  );
  const read = schema.safeParse(typed);
  const errors: Record<string, string> = {};
  for (const issue of read.error?.issues ?? []) errors[String(issue.path[0] ?? '')] ??= issue.message;
  return { fields, address: single, typed, errors, input: read.success ? read.data : null, isExample };
}

function firstOfEach(address: Address): Record<string, string> {
  const entries = Object.entries(address).flatMap(([name, value]) => {
    const first = Array.isArray(value) ? value[0] : value;
    return first === undefined ? [] : [[name, first] as const];
  });
  return Object.fromEntries(entries);
}
