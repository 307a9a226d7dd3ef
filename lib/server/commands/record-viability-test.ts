import type { Prisma } from '@/generated/prisma/client';
import { VIABILITY_KIND_LABELS } from '@/lib/domain/germination/dormancy/viability-kinds';
import { type ViabilityTestInput, viabilityTestInput } from '@/lib/schemas/viability-test';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { ungerminatedSeed } from '../trays/ungerminated-seed';
import { auditSeedOfTest, auditTest } from './audit-test';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { requireLotToTest } from './require-lot-to-test';
import { requirePacketOfLot } from './require-packet-of-lot';
import { requireTestWithdrawal } from './require-test-withdrawal';
import { requireUncorrected } from './require-uncorrected';
import { takeTestSeed } from './take-test-seed';

type Transaction = Prisma.TransactionClient;

/**
 * Writes down what a tetrazolium or cut test found, and takes its seed out of the packet if asked; or names the line by
 * which it was taken out before, or the tray whose seed left over was examined. It does not enter the forecast (decision
 * 028): the lot is judged anew only because seed is gone. A correction is a new test that names the old one; its seed was
 * taken out the first time.
 *
 * @returns number of the new test, such as 'V-0012'
 * Refusals beside fields: unknown lot, tested before harvest or before the tray was set, packet of another lot, packet
 * overdrawn or not yet filled, a tray of another lot, given up, or with less seed left over. As a whole: a test corrected
 * already, or the same test written down twice.
 * Checked in tests/server/commands/record-viability-test.test.ts
 */
export const recordViabilityTest = defineCommand({
  name: 'record-viability-test',
  role: 'volunteer',
  schema: viabilityTestInput,
  async run({ tx, person, audit, rejudge }, input) {
    const began = { on: input.testedOn, field: 'testedOn' };
    const lot = await requireLotToTest(tx, input.lot, began);
    const corrected = input.correctsId ? await testToCorrect(tx, input.correctsId) : null;
    const tray = input.trayId ? await requireTray(tx, input.trayId, lot, input) : null;
    const takenOut = input.withdrawalId
      ? await requireTestWithdrawal(tx, input.withdrawalId, { lot, seeds: input.seeds, began })
      : null;
    const packet =
      tray?.packet ?? takenOut?.packet ?? (input.packetId ? await requirePacketOfLot(tx, input.packetId, lot) : null);
    await refuseTwin(tx, lot.id, packet?.id ?? null, input);

    const id = newId();
    const number = await nextNumber(tx, 'V', 4, async (taken) =>
      Boolean(await tx.viabilityTest.findUnique({ where: { number: taken }, select: { id: true } })),
    );
    const line = input.takes && packet ? await takeSeed(tx, packet, input, number, person.id) : null;
    const test = {
      ...{ number, lotId: lot.id, packetId: packet?.id ?? null, trayId: tray?.id ?? null },
      ...{ testedOn: input.testedOn, kind: input.kind, ...input.counts },
      ...{ method: input.method ?? null, notes: input.notes ?? null },
    };
    await tx.viabilityTest.create({
      data: {
        ...{ id, ...test, byId: person.id, correctsId: corrected?.id ?? null },
        withdrawalId: line ?? takenOut?.id ?? null,
      },
    });

    const what = VIABILITY_KIND_LABELS[input.kind];
    const result = `${what}, ${aliveIn(input)} of ${input.seeds} seeds ${input.kind === 'cut' ? 'firm' : 'stained as living seed'}`;
    await auditTest(audit, {
      ...{ entity: 'viability test', id, number, lot, corrected, correctionReason: input.correctionReason },
      ...{ result, after: test },
      ...(tray ? { origin: `, left over in ${tray.number}` } : {}),
    });
    if (line && packet) {
      await auditSeedOfTest(audit, { seeds: input.seeds, packet }, `${what} ${number}`);
      rejudge([lot.id]);
    }
    if (takenOut) await auditSeedOfTest(audit, takenOut, `${what} ${number}`);
    return { number };
  },
});

const aliveIn = ({ counts }: ViabilityTestInput) => counts.stainedNormally ?? counts.firm ?? 0;

interface FoundLot {
  id: string;
  number: string;
}

async function testToCorrect(tx: Transaction, id: string) {
  return requireUncorrected(
    await tx.viabilityTest.findUnique({ where: { id }, include: { correctedBy: { select: { number: true } } } }),
  );
}

/** The tray whose left-over seed was examined: no more of it than did not grow, all tests of it together. */
async function requireTray(
  tx: Transaction,
  trayId: string,
  lot: FoundLot,
  { seeds, testedOn, correctsId }: ViabilityTestInput,
) {
  const tray = await ungerminatedSeed(tx, { id: trayId });
  if (tray?.lotId !== lot.id) throw fieldError({ trayId: `Choose a germination test of lot ${lot.number}.` });
  const { number } = tray;
  if (tray.status === 'given-up') {
    throw fieldError({ trayId: `${number} was given up: what lies in it says nothing. Take seed from a packet.` });
  }
  if (testedOn < tray.setOn) {
    throw fieldError({ testedOn: `${number} was set on ${tray.setOn}: choose that day or later.` });
  }
  const before = tray.examined.filter(({ id }) => id !== correctsId).reduce((sum, test) => sum + test.seeds, 0);
  const left = tray.hardOrFresh + tray.unclassed - before;
  if (seeds > left) {
    throw fieldError({
      trayId: `${number} has ${left} hard, fresh or unclassed ${left === 1 ? 'seed' : 'seeds'} that nobody has examined, and this test says ${seeds}. Correct the counts, or the test they belong to.`,
    });
  }
  return tray;
}

/** A form sent twice must not count as two tests. */
async function refuseTwin(
  tx: Transaction,
  lotId: string,
  packetId: string | null,
  { testedOn, kind, trayId, counts, correctsId }: ViabilityTestInput,
): Promise<void> {
  const twin = await tx.viabilityTest.findFirst({
    where: {
      ...{ lotId, testedOn, kind, packetId, trayId: trayId ?? null, ...counts, correctedBy: null },
      ...(correctsId ? { id: { not: correctsId } } : {}),
    },
    select: { number: true },
  });
  if (twin) {
    throw new AppError(
      'conflict',
      `A test of this lot on the same day with the same counts is written down already: ${twin.number}.`,
    );
  }
}

function takeSeed(
  tx: Transaction,
  packet: { id: string; number: string },
  { seeds, testedOn, kind }: ViabilityTestInput,
  number: string,
  byId: string,
): Promise<string> {
  const note = `${kind === 'cut' ? 'Cut' : 'Tetrazolium'} test ${number}`;
  return takeTestSeed(
    tx,
    { packetId: packet.id, seeds, on: testedOn, note, byId },
    {
      overdrawn: (held) =>
        `Packet ${packet.number} holds ${held} seeds, and this test used ${seeds}. Choose another packet, or do not take the seed out of the ledger.`,
      filledLater: (filledOn) =>
        `This packet was filled on ${filledOn}, after the test: the seed did not come out of it. Choose another packet, or do not take the seed out of the ledger.`,
    },
  );
}
