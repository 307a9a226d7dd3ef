type Parameters = Record<string, string | number | undefined>;

/**
 * The address of a list with some of its parameters changed. Empty ones and page 1 are left out.
 *
 * @param path    '/collection/lots'
 * @param query   what the list shows now
 * @param change  what the link changes; anything but the page begins again at page 1
 */
export function listHref(path: string, query: Parameters, change: Parameters): string {
  const parameters = new URLSearchParams();
  const next: Parameters = { ...query, page: 1, ...change };
  for (const [name, value] of Object.entries(next)) {
    if (value === undefined || value === '' || (name === 'page' && value === 1)) continue;
    parameters.set(name, String(value));
  }
  const text = parameters.toString();
  return text ? `${path}?${text}` : path;
}
