/**
 * What the search box looks through: a record's numbers and names in lower case.
 *
 * @param parts  numbers, names; empty ones are left out
 */
export function searchTextOf(parts: (string | null | undefined)[]): string {
  return parts
    .filter((part) => part)
    .join(' ')
    .toLowerCase();
}

/** The words of a search box, as `searchTextOf` writes them; all of them must be found. */
export function searchWords(typed: string): string[] {
  return typed.toLowerCase().split(/\s+/).filter(Boolean).slice(0, 10);
}
