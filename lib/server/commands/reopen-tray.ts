import { reopenTraySchema } from '@/lib/schemas/tray-counts';
import { latestVersion } from '../trays/latest-version';
import { trayInHand } from '../trays/tray-in-hand';
import { defineCommand } from './command';

/**
 * Opens a closed tray again, so that its counts can be corrected or late ones taken in. The test it was closed with goes
 * on speaking for the lot until the tray is closed again, which corrects it. For volunteers, who may correct a test too.
 *
 * Checked in tests/server/commands/close-tray.test.ts
 */
export const reopenTray = defineCommand({
  name: 'reopen-tray',
  role: 'volunteer',
  schema: reopenTraySchema,
  async run({ tx, audit }, { trayId, reason }) {
    const tray = await trayInHand(tx, trayId, 'closed');
    const test = await latestVersion(tx, trayId);
    await tx.tray.update({
      where: { id: trayId },
      data: { status: 'open', closedOn: null, closedAt: null, version: { increment: 1 } },
    });
    await audit({
      entity: 'tray',
      entityId: trayId,
      summary: `Reopened tray ${tray.number}. Reason: ${reason}`,
      before: { status: 'closed', closedOn: tray.closedOn },
      after: { status: 'open' },
    });
    if (test) {
      await audit({
        entity: 'germination test',
        entityId: test.id,
        summary: `Reopened tray ${tray.number}; ${test.number} speaks for the lot until it is closed again. Reason: ${reason}`,
      });
    }
    return { number: tray.number };
  },
});
