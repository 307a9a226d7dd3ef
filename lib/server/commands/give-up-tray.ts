import { giveUpTrayInput } from '@/lib/schemas/set-trays';
import { AppError } from '../app-error';
import { latestVersion } from '../trays/latest-version';
import { trayInHand } from '../trays/tray-in-hand';
import { defineCommand } from './command';

/**
 * Ends a tray without a result: it went mouldy, dried out, was knocked over. Its counts stay as they are and say nothing of
 * the lot. Its seed stays used; where it went back into the packet, the ledger's line is taken back by itself.
 *
 * Checked in tests/server/commands/give-up-tray.test.ts
 */
export const giveUpTray = defineCommand({
  name: 'give-up-tray',
  role: 'volunteer',
  schema: giveUpTrayInput,
  async run({ tx, audit }, { trayId, reason }) {
    const tray = await trayInHand(tx, trayId, 'open');
    const test = await latestVersion(tx, trayId);
    if (test) {
      throw new AppError(
        'refused',
        `Tray ${tray.number} was closed before, and ${test.number} speaks for its lot: close it again, or correct the test.`,
      );
    }
    await tx.tray.update({
      where: { id: trayId },
      data: { status: 'given-up', closedAt: new Date(), version: { increment: 1 } },
    });
    await audit({
      entity: 'tray',
      entityId: trayId,
      summary: `Gave up tray ${tray.number} of lot ${tray.lot.number}. Reason: ${reason}`,
      before: { status: 'open' },
      after: { status: 'given-up', reason },
    });
    return { number: tray.number, lotNumber: tray.lot.number };
  },
});
