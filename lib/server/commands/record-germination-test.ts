import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { type GerminationTestInput, germinationTestInput, type ReplicateInput } from '../../schemas/germination-test';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { auditSeedOfTest, auditTest } from './audit-test';
import { defineCommand } from './command';
import { findTwinTest } from './find-twin-test';
import { nextTestNumber } from './next-test-number';
import { requireLotToTest } from './require-lot-to-test';
import { requirePacketOfLot } from './require-packet-of-lot';
import { requireTestWithdrawal } from './require-test-withdrawal';
import { requireUncorrected } from './require-uncorrected';
import { takeTestSeed } from './take-test-seed';

type Transaction = Prisma.TransactionClient;

/**
 * Writes down a finished germination test with its replicates, takes the seeds out of their packet if asked, or names
 * the line by which they were taken out when it was set, and has the lot judged anew. A correction is a new test that names the old one; its seeds were taken out the first time.
 *
 * @returns id and number of the new test, such as 'T-0204'
 * Refusals beside fields: unknown lot, test set before harvest, packet of another lot, packet overdrawn,
 * seed taken out before that is not of this lot, used already, or too little. As a whole: a
 * test corrected already, or the same test written down twice.
 * Checked in tests/server/commands/record-germination-test.test.ts
 */
export const recordGerminationTest = defineCommand({
  name: 'record-germination-test',
  role: 'volunteer',
  schema: germinationTestInput,
  async run({ tx, person, audit, rejudge }, input) {
    const lot = await requireLotToTest(tx, input.lot, { on: input.setOn, field: 'setOn' });
    const corrected = input.correctsId ? await testToCorrect(tx, input.correctsId) : null;
    const seeds = sumOf(input.replicates, 'seeds');
    const takenOut =
      input.withdrawalId && !corrected
        ? await requireTestWithdrawal(tx, input.withdrawalId, {
            lot,
            seeds,
            began: { on: input.setOn, field: 'setOn' },
          })
        : null;
    const packet = takenOut?.packet ?? (input.packetId ? await requirePacketOfLot(tx, input.packetId, lot) : null);
    await refuseTwin(tx, lot.id, input);

    const id = newId();
    const number = await nextTestNumber(tx);
    const takes = input.takeSeed && packet !== null && corrected === null && takenOut === null;
    const line = { seeds, on: input.setOn, note: `Germination test ${number}`, byId: person.id };
    const taken = takes ? await takeTestSeed(tx, { packetId: packet.id, ...line }, refusalsOf(seeds)) : null;
    await tx.germinationTest.create({
      data: {
        id,
        number,
        lotId: lot.id,
        packetId: packet?.id,
        setOn: input.setOn,
        finishedOn: input.finishedOn,
        method: input.method,
        notes: input.notes,
        byId: person.id,
        correctsId: corrected?.id,
        withdrawalId: taken ?? takenOut?.id ?? null,
      },
    });
    await tx.replicate.createMany({
      data: input.replicates.map((replicate, index) => ({ testId: id, position: index + 1, ...replicate })),
    });

    await auditTest(audit, {
      ...{ entity: 'germination test', id, number, lot, corrected, correctionReason: input.correctionReason },
      result: `${sumOf(input.replicates, 'normal')} normal of ${seeds} seeds`,
      after: { number, ...input },
    });
    if (takes) await auditSeedOfTest(audit, { seeds, packet }, `test ${number}`);
    if (takenOut) await auditSeedOfTest(audit, takenOut, `test ${number}`);
    rejudge([...new Set([lot.id, ...(corrected ? [corrected.lotId] : [])])]);
    return { id, number };
  },
});

async function testToCorrect(tx: Transaction, id: string) {
  const test = await tx.germinationTest.findUnique({
    where: { id },
    include: {
      replicates: { omit: { testId: true }, orderBy: { position: 'asc' } },
      correctedBy: { select: { number: true } },
    },
  });
  return requireUncorrected(test);
}

/** A form sent twice must not count as two tests. A correction may well make two trays of one day alike. */
async function refuseTwin(tx: Transaction, lotId: string, input: GerminationTestInput): Promise<void> {
  const { setOn, finishedOn, replicates, correctsId } = input;
  const onlyByHand = correctsId !== undefined;
  const twin = await findTwinTest(tx, { lotId, setOn, finishedOn, replicates, ownId: correctsId, onlyByHand });
  if (twin) {
    throw new AppError(
      'conflict',
      `A test of this lot with the same days and the same counts is written down already: ${twin}.`,
    );
  }
}

const refusalsOf = (seeds: number) => ({
  overdrawn: (held: number) =>
    `The packet holds ${held} seeds, and the replicates need ${seeds}. Choose another packet, or do not take the seeds out of the ledger.`,
  filledLater: (filledOn: string) =>
    `This packet was filled on ${filledOn}, after the test was set: the seeds did not come out of it. Choose another packet, or do not take the seeds out of the ledger.`,
});

const sumOf = (replicates: readonly ReplicateInput[], count: 'seeds' | 'normal') =>
  replicates.reduce((sum, replicate) => sum + replicate[count], 0);
