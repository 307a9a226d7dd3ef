import { expect, test } from 'vitest';
import { giveUpTray } from '@/lib/server/commands/give-up-tray';
import { reopenTray } from '@/lib/server/commands/reopen-tray';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { readLedgerLines } from '@/lib/server/queries/ledger-lines';
import { getLotForTesting } from '@/lib/server/queries/lots-for-testing';
import { lastAuditLine } from '../../support/audit';
import { createLotWithPacket } from '../../support/create-tested-lot';
import { heldIn } from '../../support/ledger';
import { VOLUNTEER } from '../../support/people';
import { refusal } from '../../support/refusal';
import { closeWith, setTraysOf, trayNumbered, trayRow } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

async function oneTray() {
  const { packetId, number } = await createLotWithPacket();
  await setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })]);
  return { packetId, lotNumber: number, tray: await trayNumbered('T-0001') };
}
const giveUp = (trayId: string, reason = 'grey mould over all dishes') => giveUpTray(VOLUNTEER, { trayId, reason });
const mayBeTakenBack = async (id: string) => (await readLedgerLines([id]))[0]?.mayBeTakenBack;

test('a tray given up has no result, its seed stays used, and the reason is kept', async () => {
  const { packetId, lotNumber, tray } = await oneTray();
  await giveUp(tray.id);
  expect(await trayNumbered('T-0001')).toMatchObject({ status: 'given-up', closedOn: null, version: 2 });
  expect(heldIn(packetId)).toBe(900);
  expect(lastAuditLine()).toMatchObject({
    entity: 'tray',
    summary: 'Gave up tray T-0001 of lot L-2020-001. Reason: grey mould over all dishes',
  });
  // It is not offered to another test: it went into this one.
  expect((await getLotForTesting(lotNumber))?.takenOut).toEqual([]);
});

test('a reason is needed, and a tray is given up once', async () => {
  const { tray } = await oneTray();
  expect((await refusal(giveUp(tray.id, ' '))).fieldErrors).toHaveProperty('reason');
  await giveUp(tray.id);
  expect((await refusal(giveUp(tray.id))).code).toBe('conflict');
});

test('seed of an open or closed tray is not put back; of one given up it is', async () => {
  const { packetId, tray } = await oneTray();
  const movementId = tray.withdrawalId ?? '';
  expect((await refusal(undoMovement(VOLUNTEER, { movementId }))).userMessage).toContain('T-0001');
  expect(await mayBeTakenBack(movementId)).toBe(false);
  await giveUp(tray.id);
  expect(await mayBeTakenBack(movementId)).toBe(true);
  await undoMovement(VOLUNTEER, { movementId, note: 'nothing was wetted' });
  expect(heldIn(packetId)).toBe(1000);
  expect(await mayBeTakenBack(movementId)).toBe(false);
  expect((await refusal(undoMovement(VOLUNTEER, { movementId }))).code).toBe('conflict');

  await setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })]);
  await closeWith('T-0002', 80);
  const closed = (await trayNumbered('T-0002')).withdrawalId ?? '';
  expect((await refusal(undoMovement(VOLUNTEER, { movementId: closed }))).userMessage).toContain('T-0002');
  expect(await mayBeTakenBack(closed)).toBe(false);
});

test('a tray that was closed before has a test that speaks for the lot: it is not given up', async () => {
  const { tray } = await oneTray();
  await closeWith('T-0001', 80);
  expect((await refusal(giveUp(tray.id))).code).toBe('conflict');
  await reopenTray(VOLUNTEER, { trayId: tray.id, reason: 'a count was wrong' });
  expect((await refusal(giveUp(tray.id))).userMessage).toContain('T-0001 speaks');
});
