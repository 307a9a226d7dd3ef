import type { Prisma } from '@/generated/prisma/client';
import { equilibriumMoisture } from '@/lib/domain/moisture/equilibrium';
import { moistureMethod } from '@/lib/domain/moisture/moisture-methods';
import { ovenDishes } from '@/lib/domain/moisture/oven-dishes';
import { MOISTURE_PERCENT } from '@/lib/schemas/limits';
import { type MoistureTestInput, moistureTestInput } from '@/lib/schemas/moisture-test';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { auditSeedOfTest, auditTest } from './audit-test';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetBalance } from './packet-balance';
import { requireLotToTest } from './require-lot-to-test';
import { requirePacketOfLot } from './require-packet-of-lot';
import { requireUncorrected } from './require-uncorrected';
import { seedsInGrams } from './seeds-in-grams';

type Transaction = Prisma.TransactionClient;

/**
 * Writes down what a lot's moisture was found to be, takes the seed that was used out of its packet if asked, and has the
 * lot judged anew: a sealed stay whose moisture nobody wrote is reckoned at it. A correction is a new test that names
 * the old one; its seed was taken out the first time.
 *
 * @returns number of the new test, such as 'M-0012', its lot's number and the moisture
 * Refusals beside fields: unknown lot, tested before harvest, packet of another lot, packet overdrawn or not yet filled, a
 * crop whose oil is not known (air over the seed), a moisture that no seed has. As a whole: a test corrected already, or
 * the same test written down twice.
 * Checked in tests/server/commands/record-moisture-test.test.ts
 */
export const recordMoistureTest = defineCommand({
  name: 'record-moisture-test',
  role: 'volunteer',
  schema: moistureTestInput,
  async run({ tx, person, audit, rejudge }, input) {
    const lot = await requireLotToTest(tx, input.lot, { on: input.testedOn, field: 'testedOn' });
    const corrected = input.correctsId ? await testToCorrect(tx, input.correctsId) : null;
    const packet = input.packetId ? await requirePacketOfLot(tx, input.packetId, lot) : null;
    const moisturePercent = await moistureFound(tx, input, lot.accession.cropId);
    await refuseTwin(tx, lot.id, input, moisturePercent);

    const id = newId();
    const number = await nextNumber(tx, 'M', 4, async (taken) =>
      Boolean(await tx.moistureTest.findUnique({ where: { number: taken }, select: { id: true } })),
    );
    const taken = input.used && packet ? await takeSeed(tx, { ...packet, lot }, input, number, person.id) : null;
    const test = {
      number,
      lotId: lot.id,
      packetId: packet?.id ?? null,
      testedOn: input.testedOn,
      method: input.method,
      moisturePercent,
      relativeHumidity: input.air?.relativeHumidity ?? null,
      temperatureC: input.air?.temperatureC ?? null,
      notes: input.notes ?? null,
    };
    await tx.moistureTest.create({
      data: { id, ...test, byId: person.id, withdrawalId: taken?.movementId, correctsId: corrected?.id },
    });
    await tx.moistureDish.createMany({
      data: input.dishes.map((dish, index) => ({ testId: id, position: index + 1, ...dish })),
    });

    await auditTest(audit, {
      ...{ entity: 'moisture test', id, number, lot, corrected, correctionReason: input.correctionReason },
      result: `${moisturePercent.toFixed(1)} % by ${moistureMethod(input.method).short}`,
      after: { ...test, dishes: input.dishes },
    });
    if (taken && packet) {
      await auditSeedOfTest(audit, { seeds: taken.seeds, packet }, `moisture test ${number}`);
    }
    rejudge([...new Set([lot.id, ...(corrected ? [corrected.lotId] : [])])]);
    return { number, lotNumber: lot.number, moisturePercent };
  },
});

async function testToCorrect(tx: Transaction, id: string) {
  const test = await tx.moistureTest.findUnique({
    where: { id },
    include: {
      dishes: { omit: { testId: true }, orderBy: { position: 'asc' } },
      correctedBy: { select: { number: true } },
    },
  });
  return requireUncorrected(test);
}

async function moistureFound(tx: Transaction, input: MoistureTestInput, cropId: string): Promise<number> {
  const oven = input.dishes.length > 0 ? ovenDishes(input.dishes).moisturePercent : undefined;
  const found = input.moisturePercent ?? oven ?? (await moistureFromAir(tx, input, cropId));
  const { min, max } = MOISTURE_PERCENT;
  if (found < min || found > max) {
    const field = oven === undefined ? (input.air ? 'humidityPercent' : 'moisturePercent') : 'dishes.0.dishAndDryG';
    throw fieldError({ [field]: `That is ${found.toFixed(1)} % moisture, which no seed has: check the figures.` });
  }
  return found;
}

async function moistureFromAir(tx: Transaction, { air }: MoistureTestInput, cropId: string): Promise<number> {
  const oil = await tx.cropFact.aggregate({
    where: { cropId, kind: 'oil fraction' },
    _min: { lower: true },
    _max: { upper: true },
  });
  if (oil._min.lower === null || oil._max.upper === null) {
    throw fieldError({
      humidityPercent: "The oil of this crop's seed is not known, so its moisture cannot be worked out from the air.",
    });
  }
  if (!air) throw new Error('an air test without air came through its schema');
  return equilibriumMoisture({ ...air, oilFraction: (oil._min.lower + oil._max.upper) / 2 });
}

/** A form sent twice must not count as two tests: that would pretend twice the evidence. */
async function refuseTwin(
  tx: Transaction,
  lotId: string,
  { testedOn, method, packetId, correctsId, dishes }: MoistureTestInput,
  moisturePercent: number,
): Promise<void> {
  const alike = await tx.moistureTest.findMany({
    where: { lotId, testedOn, method, moisturePercent, packetId: packetId ?? null, correctedBy: null },
    select: {
      id: true,
      number: true,
      dishes: { omit: { testId: true, position: true }, orderBy: { position: 'asc' } },
    },
  });
  const written = JSON.stringify(dishes.map(inOrder));
  const twin = alike.find((test) => test.id !== correctsId && JSON.stringify(test.dishes.map(inOrder)) === written);
  if (twin) {
    throw new AppError(
      'conflict',
      `A test of this lot on the same day with the same figures is written down already: ${twin.number}.`,
    );
  }
}

type Dish = MoistureTestInput['dishes'][number];
const inOrder = ({ dishG, dishAndFreshG, dishAndDryG, beforePreDryingG, afterPreDryingG }: Dish) => [
  dishG,
  dishAndFreshG,
  dishAndDryG,
  beforePreDryingG,
  afterPreDryingG,
];

async function takeSeed(
  tx: Transaction,
  packet: { id: string; number: string; lot: { id: string; thousandSeedWeightG: number | null } },
  { used, testedOn }: MoistureTestInput,
  number: string,
  byId: string,
): Promise<{ movementId: string; seeds: number } | null> {
  if (!used) return null;
  const filled = await tx.movement.aggregate({ where: { packetId: packet.id }, _min: { on: true } });
  if (filled._min.on !== null && testedOn < filled._min.on) {
    throw fieldError({
      packetId: `This packet was filled on ${filled._min.on}, after the test: the seed did not come out of it. Choose another packet, or do not take the seed out of the ledger.`,
    });
  }
  const { seeds, seedsSd } =
    used.unit === 'seeds' ? { seeds: used.amount, seedsSd: 0 } : await seedsInGrams(tx, packet, used.amount);
  const held = await packetBalance(tx, packet.id);
  if (seeds > held) {
    throw fieldError({
      amount: `Packet ${packet.number} holds about ${held} seeds, and this is about ${seeds}. Correct it, choose another packet, or do not take the seed out of the ledger.`,
    });
  }
  const movementId = newId();
  await tx.movement.create({
    data: {
      id: movementId,
      packetId: packet.id,
      on: testedOn,
      reason: 'test',
      seeds: -seeds,
      grams: used.unit === 'grams' ? -used.amount : null,
      seedsSd,
      note: `Moisture test ${number}`,
      byId,
    },
  });
  return { movementId, seeds };
}
