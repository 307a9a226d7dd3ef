import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { type GerminationTestInput, germinationTestInput, type ReplicateInput } from '../../schemas/germination-test';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { findTwinTest } from './find-twin-test';
import { nextTestNumber } from './next-test-number';
import { requirePacketOfLot } from './require-packet-of-lot';
import { requireTestWithdrawal } from './require-test-withdrawal';
import { requireUncorrected } from './require-uncorrected';

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
    const lot = await requireLot(tx, input);
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
    const line = takes ? { packetId: packet.id, seeds, on: input.setOn, number, byId: person.id } : null;
    const withdrawalId = line ? await takeSeed(tx, line) : takenOut?.id;
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
        withdrawalId,
      },
    });
    await tx.replicate.createMany({
      data: input.replicates.map((replicate, index) => ({ testId: id, position: index + 1, ...replicate })),
    });

    const result = `${sumOf(input.replicates, 'normal')} normal of ${seeds} seeds`;
    await audit({
      entity: 'germination test',
      entityId: id,
      summary: corrected
        ? `Corrected ${corrected.number} as ${number}, lot ${lot.number}: ${result}. Reason: ${input.correctionReason}`
        : `Recorded ${number} on lot ${lot.number}: ${result}`,
      before: corrected ?? undefined,
      after: { number, ...input },
    });
    if (corrected) {
      await audit({
        entity: 'germination test',
        entityId: corrected.id,
        summary: `Corrected by ${number}. Reason: ${input.correctionReason}`,
      });
    }
    if (takes) {
      await audit({
        entity: 'packet',
        entityId: packet.id,
        summary: `${seeds} seeds taken out of ${packet.number} for test ${number}`,
      });
    }
    if (takenOut) {
      await audit({
        entity: 'packet',
        entityId: takenOut.packet.id,
        summary: `${takenOut.seeds} seeds taken out of ${takenOut.packet.number} on ${takenOut.on} went into test ${number}`,
      });
    }
    rejudge([...new Set([lot.id, ...(corrected ? [corrected.lotId] : [])])]);
    return { id, number };
  },
});

interface FoundLot {
  id: string;
  number: string;
}

async function requireLot(tx: Transaction, input: GerminationTestInput): Promise<FoundLot> {
  const lot = await tx.lot.findUnique({
    where: { number: input.lot },
    select: { id: true, number: true, harvestedOn: true },
  });
  if (!lot) throw fieldError({ lot: `There is no lot ${input.lot} in the collection.` });
  if (input.setOn < lot.harvestedOn) {
    throw fieldError({
      setOn: `Lot ${lot.number} was harvested on ${lot.harvestedOn}: it cannot be tested before that.`,
    });
  }
  return lot;
}

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

async function takeSeed(
  tx: Transaction,
  { packetId, seeds, on, number, byId }: { packetId: string; seeds: number; on: string; number: string; byId: string },
): Promise<string> {
  const ledger = await tx.movement.aggregate({ where: { packetId }, _sum: { seeds: true }, _min: { on: true } });
  const held = ledger._sum.seeds ?? 0;
  if (seeds > held) {
    throw fieldError({
      packetId: `The packet holds ${held} seeds, and the replicates need ${seeds}. Choose another packet, or do not take the seeds out of the ledger.`,
    });
  }
  const filledOn = ledger._min.on;
  if (filledOn !== null && on < filledOn) {
    throw fieldError({
      packetId: `This packet was filled on ${filledOn}, after the test was set: the seeds did not come out of it. Choose another packet, or do not take the seeds out of the ledger.`,
    });
  }
  const id = newId();
  await tx.movement.create({
    data: { id, packetId, on, reason: 'test', seeds: -seeds, seedsSd: 0, note: `Germination test ${number}`, byId },
  });
  return id;
}

const sumOf = (replicates: readonly ReplicateInput[], count: 'seeds' | 'normal') =>
  replicates.reduce((sum, replicate) => sum + replicate[count], 0);
