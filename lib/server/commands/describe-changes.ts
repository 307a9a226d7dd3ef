/** A record's fields as one line of plain words: for the audit, and for whoever saved at the same time. */

type Value = string | number | boolean | null | undefined;
export type Fields = Record<string, Value>;

/** Long texts are named, not quoted. */
const MOST_QUOTED = 60;

/**
 * What differs between two states of a record.
 *
 * @param before, after  the same fields; null and undefined both mean 'empty'
 * @param labels         the field's name in the users' words; only fields with a label are looked at
 * @returns 'name from “Holm” to “Holm Yellow”, donor filled in with “…”', or '' when nothing differs
 * Checked in tests/server/commands/describe-changes.test.ts
 */
export function describeChanges(before: Fields, after: Fields, labels: Record<string, string>): string {
  const changes: string[] = [];
  for (const [field, label] of Object.entries(labels)) {
    const [was, is] = [before[field] ?? null, after[field] ?? null];
    if (was === is) continue;
    if (was === null) changes.push(`${label} filled in${isLong(is) ? '' : ` with ${quote(is)}`}`);
    else if (is === null) changes.push(`${label} emptied${isLong(was) ? '' : ` (was ${quote(was)})`}`);
    else if (isLong(was) || isLong(is)) changes.push(`${label} rewritten`);
    else changes.push(`${label} from ${quote(was)} to ${quote(is)}`);
  }
  return changes.join(', ');
}

const isLong = (value: Value) => String(value).length > MOST_QUOTED;

function quote(value: Value): string {
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  return typeof value === 'number' ? String(value) : `“${value}”`;
}
