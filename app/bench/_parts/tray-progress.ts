import type { DishState, Unready } from '@/lib/domain/germination/bench/dish-state';
import type { TrayView } from '../_store/bench-view';

/** Dishes that hold seed and were not looked at on a day. */
export const dishesNotCounted = ({ dishes }: Pick<TrayView, 'dishes'>, on: string): DishState[] =>
  dishes.filter(({ remaining, days }) => remaining > 0 && days.every((day) => day.on !== on));

/** What must be put right before a tray is left: at the final count every seed has a class. */
export const toPutRight = ({ tray, unready }: TrayView, on: string): Unready[] =>
  on >= tray.finalCountOn ? unready : unready.filter(({ reason }) => reason !== 'not-classed');

/**
 * Whether nothing more is to be done with a tray on a day.
 *
 * Checked in tests/app/bench/tray-progress.test.ts
 */
export const isDoneWith = (view: TrayView, on: string): boolean =>
  dishesNotCounted(view, on).length === 0 && toPutRight(view, on).length === 0;

/** Every seed of every dish has a class and nothing disagrees: its test can be closed. */
export const isReadyToClose = ({ unready }: TrayView): boolean => unready.length === 0;
