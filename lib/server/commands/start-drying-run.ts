import type { Prisma } from '@/generated/prisma/client';
import { startDryingRunSchema } from '@/lib/schemas/drying-run';
import { localDate, nowEpochSeconds } from '../local-time';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { momentOf } from './moment-of-weighing';
import { noSuchLot } from './require-lot-to-test';

/**
 * Lays seed of a lot out to dry: its moisture now, the weight to start from, and the moisture to stop at. The first
 * weighing is part of it.
 *
 * @returns number of the run, such as 'D-0004'
 * Refusals beside fields: unknown lot, packet, store or test; a target that is not drier than the start; a time ahead
 * or before harvest.
 * Checked in tests/server/commands/drying-runs.test.ts
 */
export const startDryingRun = defineCommand({
  name: 'start-drying-run',
  role: 'volunteer',
  schema: startDryingRunSchema,
  async run({ tx, person, audit }, input) {
    const lot = await tx.lot.findUnique({
      where: { number: input.lot },
      select: { id: true, number: true, harvestedOn: true },
    });
    if (!lot) throw noSuchLot(input.lot);
    const atEpochSeconds = momentOf(input.at, nowEpochSeconds());
    const startedOn = localDate(atEpochSeconds);
    if (startedOn < lot.harvestedOn) {
      throw fieldError({
        at: `Lot ${lot.number} was harvested on ${lot.harvestedOn}: it was not laid out before that.`,
      });
    }
    const packet = input.packetId ? await requirePacket(tx, input.packetId, lot) : null;
    if (input.storeId && !(await tx.store.findUnique({ where: { id: input.storeId }, select: { id: true } }))) {
      throw fieldError({ storeId: 'This store is no longer there: choose another.' });
    }
    const startMoisturePercent = input.startMoisturePercent ?? (await moistureOfTest(tx, input.moistureTestId, lot));
    if (input.targetMoisturePercent >= startMoisturePercent) {
      throw fieldError({
        targetMoisturePercent: `The seed is at ${startMoisturePercent.toFixed(1)} % now: write less than that.`,
      });
    }
    const id = newId();
    const number = await nextNumber(tx, 'D', 4, async (taken) =>
      Boolean(await tx.dryingRun.findUnique({ where: { number: taken }, select: { id: true } })),
    );
    const run = {
      number,
      lotId: lot.id,
      packetId: packet?.id ?? null,
      storeId: input.storeId ?? null,
      dryingWith: input.dryingWith ?? null,
      startedOn,
      startMoisturePercent,
      moistureTestId: input.moistureTestId ?? null,
      targetMoisturePercent: input.targetMoisturePercent,
      tareG: input.tareG,
      notes: input.notes ?? null,
    };
    await tx.dryingRun.create({ data: { id, ...run, byId: person.id } });
    await tx.dryingWeighing.create({
      data: { id: newId(), runId: id, atEpochSeconds, weightG: input.weightG, byId: person.id },
    });
    await audit({
      entity: 'drying run',
      entityId: id,
      summary: `Started drying run ${number} of lot ${lot.number}${packet ? `, packet ${packet.number}` : ''}: from ${startMoisturePercent.toFixed(1)} % to ${input.targetMoisturePercent} %, ${input.weightG} g with the tray`,
      after: { ...run, weightG: input.weightG, version: 1 },
    });
    return { number };
  },
});

interface FoundLot {
  id: string;
  number: string;
}

async function requirePacket(tx: Prisma.TransactionClient, packetId: string, lot: FoundLot) {
  const packet = await tx.packet.findUnique({
    where: { id: packetId },
    select: { id: true, number: true, lotId: true },
  });
  if (packet?.lotId !== lot.id) throw fieldError({ packetId: `Choose a packet of lot ${lot.number}.` });
  return packet;
}

async function moistureOfTest(
  tx: Prisma.TransactionClient,
  testId: string | undefined,
  lot: FoundLot,
): Promise<number> {
  const test = await tx.moistureTest.findUnique({
    where: { id: testId ?? '' },
    select: { lotId: true, moisturePercent: true, correctedBy: { select: { number: true } } },
  });
  if (test?.lotId !== lot.id) throw fieldError({ moistureTestId: `Choose a moisture test of lot ${lot.number}.` });
  if (test.correctedBy) {
    throw fieldError({ moistureTestId: `This test was corrected meanwhile: choose ${test.correctedBy.number}.` });
  }
  return test.moisturePercent;
}
