import type { Prisma } from '@/generated/prisma/client';
import { yearOf } from '@/lib/domain/calendar/calendar-date';
import { type SeedsInLot, seedsInLot } from '@/lib/domain/stock/seeds-in-lot';
import { spreadOfAmount } from '@/lib/domain/stock/spread-of-amount';
import { logCleanedLotSchema } from '@/lib/schemas/lot';
import type { AppError } from '../app-error';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { findAccession } from './find-accession';
import { requireSafePlacement } from './require-safe-placement';
import { roleAtPlace } from './role-at-place';
import { usualSeed } from './usual-seed';

/** Puts cleaned seed into store: the lot, its first packet, where that lies, and the deposit, in one go. */
export const logCleanedLot = defineCommand({
  name: 'log-cleaned-lot',
  role: 'volunteer',
  schema: logCleanedLotSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const accession = await findAccession(tx, input.accession, 'accession');
    const storedOn = input.storedOn ?? today;
    const place = await requireSafePlacement(tx, {
      ...input,
      from: storedOn,
      cropId: accession.cropId,
      presentStoreId: null,
    });
    const usual = await usualSeed(tx, accession.cropId);
    const amount = seedsInLot({
      seedCount: input.seedCount ?? null,
      cleanWeightG: input.cleanWeightG ?? null,
      thousandSeedWeightG: input.thousandSeedWeightG ?? null,
      usualSeedsPerGram: usual?.seedsPerGram ?? null,
    });
    if (!amount.ok) throw refuseAmount(amount);
    const number = await lotNumberFor(tx, input.lotNumber, input.harvestedOn);
    const lotId = newId();
    const packetId = newId();
    const packetNumber = await nextNumber(
      tx,
      'P',
      5,
      async (taken) => (await tx.packet.findUnique({ where: { number: taken }, select: { id: true } })) !== null,
    );
    const lot = {
      number,
      accessionId: accession.id,
      harvestedOn: input.harvestedOn,
      generation: input.generation ?? 0,
      isolation: input.isolation,
      plantsHarvested: input.plantsHarvested,
      cleanWeightG: input.cleanWeightG,
      thousandSeedWeightG: amount.thousandSeedWeightG,
      treatment: input.treatment,
      notes: input.notes,
    };
    const note =
      amount.from === 'estimated' ? `estimated at ${usual?.seedsPerGram} seeds a gram, as is usual for the crop` : null;
    await tx.lot.create({ data: { id: lotId, ...lot } });
    await tx.packet.create({
      data: { id: packetId, number: packetNumber, lotId, role: roleAtPlace('active', place) },
    });
    await tx.placement.create({
      data: {
        id: newId(),
        packetId,
        storeId: input.storeId,
        from: storedOn,
        container: input.container,
        moisturePercent: input.moisturePercent,
      },
    });
    await tx.movement.create({
      data: {
        id: newId(),
        packetId,
        on: storedOn,
        reason: 'deposit',
        seeds: amount.seeds,
        grams: input.cleanWeightG,
        seedsSd: spreadOfAmount({
          seeds: amount.seeds,
          weighedG: amount.from === 'counted' ? null : (input.cleanWeightG ?? null),
          seedWeightError: amount.from === 'estimated' ? usual?.error : undefined,
        }),
        note,
        byId: person.id,
      },
    });
    rejudge([lotId]);
    await audit({
      entity: 'lot',
      entityId: lotId,
      summary: `Stored lot ${number} of ${accession.name}: ${amount.seeds} seeds${note ? ` (${note})` : ''} as packet ${packetNumber} in ${place.name}`,
      after: { ...lot, packetNumber, storeId: input.storeId, storedOn, seeds: amount.seeds, version: 1 },
    });
    return { lotId, number, packetId, packetNumber, seeds: amount.seeds, estimated: amount.from === 'estimated' };
  },
});

/** The number typed, when it is free; else the next of the harvest year. */
async function lotNumberFor(tx: Prisma.TransactionClient, typed: string | undefined, harvestedOn: string) {
  const isTaken = async (number: string) =>
    (await tx.lot.findUnique({ where: { number }, select: { id: true } })) !== null;
  if (typed === undefined) return nextNumber(tx, `L-${yearOf(harvestedOn)}`, 3, isTaken);
  if (await isTaken(typed)) {
    throw fieldError({ lotNumber: `${typed} is another lot's number. Leave this empty to get the next free one.` });
  }
  return typed;
}

function refuseAmount(amount: Exclude<SeedsInLot, { ok: true }>): AppError {
  switch (amount.reason) {
    case 'amount-needed':
      return fieldError({ cleanWeightG: 'Weigh the seed or count it: one of the two is needed.' });
    case 'seed-size-needed':
      return fieldError({
        thousandSeedWeightG:
          'The reference does not say how many seeds of this crop weigh a gram: weigh a hundred seeds, times ten, or give a seed count.',
      });
    case 'no-whole-seed':
      return fieldError({ cleanWeightG: 'This is less than one seed weighs: check the weight and its unit, grams.' });
    case 'figures-disagree':
      return fieldError({
        seedCount: `The weight and thousand-seed weight give about ${amount.seedsByWeight} seeds: check all three, or leave one empty.`,
      });
  }
}
