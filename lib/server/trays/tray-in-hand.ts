import type { Prisma } from '@/generated/prisma/client';
import { type DishState, dishStates } from '@/lib/domain/germination/bench/dish-state';
import { AppError, notFound } from '../app-error';
import { selectCount, type WrittenCount, writtenCount } from './count-row';

const STATUS_WORDS: Record<string, string> = { open: 'open', closed: 'closed', 'given-up': 'given up' };

/** The tray a command works on, with every dish and count as they stand under the write lock. */
export interface TrayInHand extends Prisma.TrayGetPayload<{ include: typeof WITH_COUNTS }> {
  states: DishState<WrittenCount>[];
}

const WITH_COUNTS = {
  lot: { select: { id: true, number: true } },
  dishes: { select: { id: true, position: true, seeds: true }, orderBy: { position: 'asc' } },
  counts: { select: selectCount, orderBy: { id: 'asc' } },
} as const;

/**
 * @param status  what it must be
 * @throws AppError 'not-found', or 'conflict' when it was closed, reopened or given up meanwhile
 */
export async function trayInHand(
  tx: Prisma.TransactionClient,
  id: string,
  status: 'open' | 'closed',
): Promise<TrayInHand> {
  const tray = await tx.tray.findUnique({ where: { id }, include: WITH_COUNTS });
  if (!tray) throw notFound('This tray');
  if (tray.status !== status) {
    const today = STATUS_WORDS[tray.status] ?? tray.status;
    throw new AppError('conflict', `Tray ${tray.number} is ${today} by now: load the page again.`);
  }
  return { ...tray, states: dishStates(tray.dishes, tray.counts.map(writtenCount)) };
}
