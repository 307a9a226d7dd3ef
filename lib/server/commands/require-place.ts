import type { Prisma } from '@/generated/prisma/client';
import { fieldError } from './field-error';

/** Deeper than any freezer, shelf and box; ends the walk should nesting ever be broken. */
const DEEPEST = 20;

/**
 * Checks a store's name and the store around it.
 *
 * @param ownId  of the store that is edited; null for a new one
 * @returns the name of the store around it, or null
 * @throws AppError beside `name` when it is taken, beside `parentId` when that is missing or lies inside this store
 */
export async function requirePlace(
  tx: Prisma.TransactionClient,
  input: { name: string; parentId?: string },
  ownId: string | null,
): Promise<string | null> {
  const [same] = await tx.$queryRaw<{ id: string; name: string }[]>`
    SELECT "id", "name" FROM "Store" WHERE "name" = ${input.name} COLLATE NOCASE AND "id" IS NOT ${ownId} LIMIT 1`;
  if (same) throw fieldError({ name: `There is a store called ${same.name} already: choose another name.` });
  if (!input.parentId) return null;
  let outermost: { id: string; name: string; parentId: string | null } | null = null;
  let next: string | null = input.parentId;
  for (let depth = 0; next !== null; depth += 1) {
    const place: { id: string; name: string; parentId: string | null } | null = await tx.store.findUnique({
      where: { id: next },
      select: { id: true, name: true, parentId: true },
    });
    if (!place) throw fieldError({ parentId: 'This store is no longer there: choose another.' });
    if (place.id === ownId || depth > DEEPEST) {
      throw fieldError({ parentId: 'A store cannot lie inside itself: choose another.' });
    }
    outermost ??= place;
    next = place.parentId;
  }
  return outermost?.name ?? null;
}
