import type { TrayView } from '../_store/bench-view';

/**
 * Where taking back changed something, so that it can be shown and said.
 *
 * @param before  trays before
 * @param after   trays after; what did not change is the same object
 * @returns the first dish that differs; null when none does
 * Checked in tests/app/bench/whats-undone.test.ts
 */
export function whatsUndone(
  before: readonly TrayView[],
  after: readonly TrayView[],
): { trayNumber: string; dish: number } | null {
  const old = new Map(before.map((view) => [view.tray.number, view]));
  for (const view of after) {
    const was = old.get(view.tray.number);
    if (!was || was === view) continue;
    const dish = view.dishes.findIndex((state, index) => JSON.stringify(state) !== JSON.stringify(was.dishes[index]));
    if (dish >= 0) return { trayNumber: view.tray.number, dish };
  }
  return null;
}
