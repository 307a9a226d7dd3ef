import type { GerminationQuery } from '@/lib/schemas/germination-query';

/** The address of the list with some of its filters changed; what is as usual is left out. */
export function listAddress(query: GerminationQuery, change: Partial<GerminationQuery>): string {
  const parameters = new URLSearchParams();
  for (const [name, value] of Object.entries({ ...query, ...change })) {
    if (value !== undefined && value !== '' && value !== 1) parameters.set(name, String(value));
  }
  const text = parameters.toString();
  return text ? `/germination?${text}` : '/germination';
}
