import { expect, test } from 'vitest';
import { closeTray } from '@/lib/server/commands/close-tray';
import { getTestCertificate } from '@/lib/server/queries/test-certificate';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { createTray } from '../../support/create-tray';
import { VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

test('a tray under way has no certificate; closed, it names who counted', async () => {
  const tray = await createTray({
    counts: [
      { on: '2026-11-24', dish: 1, found: { normal: 45, dead: 5 } },
      { on: '2026-11-24', dish: 2, found: { normal: 40, dead: 10 } },
    ],
  });
  expect(await getTestCertificate(tray.number)).toBeNull();
  await closeTray(VOLUNTEER, { trayId: tray.id });
  const certificate = await getTestCertificate(tray.number);
  expect(certificate).toMatchObject({ countedBy: ['Moss'], writtenByHand: false, test: { number: tray.number } });
  expect(certificate?.bankName).not.toBe('');
});

test('of a test written down by hand it names who wrote it, and that it was corrected', async () => {
  await createLotWithPacket();
  const first = await recordTest();
  const second = await recordTest({
    ...{ correctsId: first.id, correctionReason: 'swapped' },
    replicates: [{ seeds: 100, normal: 60 }],
  });
  expect(await getTestCertificate(first.number)).toMatchObject({
    countedBy: [VOLUNTEER.name],
    writtenByHand: true,
    test: { correctedByNumber: second.number },
  });
  expect(await getTestCertificate('T-9999')).toBeNull();
});
