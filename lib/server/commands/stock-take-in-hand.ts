import type { Prisma } from '@/generated/prisma/client';
import { AppError, notFound } from '../app-error';

const STATUS_WORDS: Record<string, string> = { closed: 'closed', 'given-up': 'given up' };

export interface OpenStockTake {
  id: string;
  number: string;
  byId: string;
  storeId: string;
  storeName: string;
}

/** @throws AppError when there is no such stock-take, or it is no longer open */
export async function openStockTake(tx: Prisma.TransactionClient, id: string): Promise<OpenStockTake> {
  const take = await tx.stockTake.findUnique({
    where: { id },
    select: { id: true, number: true, byId: true, status: true, storeId: true, store: { select: { name: true } } },
  });
  if (!take) throw notFound('This stock-take');
  const { status, store, ...rest } = take;
  if (status !== 'open') {
    throw new AppError(
      'conflict',
      `${take.number} was ${STATUS_WORDS[status]} meanwhile: nothing more can be entered.`,
    );
  }
  return { ...rest, storeName: store.name };
}

/** Ids of a store and of all that stand in it. */
export async function storesInside(
  tx: Pick<Prisma.TransactionClient, '$queryRaw'>,
  storeId: string,
): Promise<Set<string>> {
  const rows = await tx.$queryRaw<{ id: string }[]>`
    WITH RECURSIVE inside(id) AS (
      SELECT ${storeId} UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id
    ) SELECT id FROM inside`;
  return new Set(rows.map(({ id }) => id));
}
