import 'server-only';
import { SINGLE_STEWARD } from '../auth/single-steward';
import { reader } from '../database/connections';

/** The names of these people, by id; who is no longer there is missing. */
export async function namesOf(ids: string[]): Promise<Map<string, string>> {
  const people = await reader().user.findMany({
    where: { id: { in: [...new Set(ids)] } },
    select: { id: true, name: true },
  });
  return new Map([SINGLE_STEWARD, ...people].map((person) => [person.id, person.name]));
}
