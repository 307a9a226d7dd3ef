import { COLUMN_PREFIX } from '@/lib/schemas/import/column-choice';

interface Props {
  importId: string;
  fields: { key: string; label: string; required: boolean }[];
  header: string[];
  mapping: Record<string, number | null>;
  sample: string[][];
}

/** Which column holds what: guessed, and changeable. Sent as an address, so the check can be repeated and shared. */
export function ColumnsForm({ importId, fields, header, mapping, sample }: Props) {
  return (
    <section className="grid gap-3">
      <h2>Columns</h2>
      <form action={`/import/${importId}`} className="sheet grid gap-4">
        <div className="grid gap-x-6 gap-y-4 sm:grid-cols-2 lg:grid-cols-3">
          {fields.map((field) => (
            <label key={field.key} className="grid content-start gap-1">
              <span className="font-semibold">
                {field.label}
                {!field.required && <span className="quiet font-normal"> (optional)</span>}
              </span>
              <select name={`${COLUMN_PREFIX}${field.key}`} defaultValue={mapping[field.key] ?? ''} className="field">
                <option value="">not in this file</option>
                {header.map((heading, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place; headings may repeat
                  <option key={column} value={column}>
                    {heading || `column ${column + 1}`}
                  </option>
                ))}
              </select>
              <span className="label truncate">{exampleOf(mapping[field.key], sample)}</span>
            </label>
          ))}
        </div>
        <button type="submit" className="button w-fit">
          Check again with these columns
        </button>
      </form>
    </section>
  );
}

function exampleOf(column: number | null | undefined, sample: string[][]): string {
  if (column === null || column === undefined) return ' ';
  const values = sample.map((cells) => cells[column]?.trim()).filter(Boolean);
  return values.length > 0 ? `such as ${values.slice(0, 3).join(' · ')}` : 'empty in the first rows';
}
