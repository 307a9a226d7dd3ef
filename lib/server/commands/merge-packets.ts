import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { judgeMerge } from '@/lib/domain/stock/merge-rule';
import { mergePacketsSchema } from '@/lib/schemas/packet';
import { connections } from '../database/connections';
import { ageingOfPacket } from '../judging/age-tests';
import { loadCropJudging } from '../judging/load-crop-judging';
import { loadLots } from '../judging/load-lots';
import { storeClimates } from '../judging/store-climates';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { isOnlySafetyDuplicate } from './only-safety-duplicate';
import { type PacketInHand, packetInHand, refuseBeforeLastMove, refuseMoved } from './packet-in-hand';
import { uncertainBalance } from './uncertain-balance';

/**
 * Pours all of one packet into another of the same lot. The packet that is kept gives its storage history to all the
 * seed, so it must be the one whose seed aged more, unless somebody knows better.
 */
export const mergePackets = defineCommand({
  name: 'merge-packets',
  role: 'volunteer',
  schema: mergePacketsSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const kept = await packetInHand(tx, input.packetId, 'The packet to keep');
    const poured = await packetInHand(tx, input.otherPacketId, 'The packet to empty');
    if (kept.id === poured.id)
      throw fieldError({ otherPacketId: 'A packet cannot be poured into itself: choose another.' });
    if (kept.lot.id !== poured.lot.id) {
      throw fieldError({
        otherPacketId: `${poured.number} holds seed of lot ${poured.lot.number}, ${kept.number} of lot ${kept.lot.number}: seed of two lots is never mixed.`,
      });
    }
    await refuseMoved(tx, kept, input.version);
    const on = input.on ?? today;
    refuseBeforeLastMove(kept, on, 'on');
    refuseBeforeLastMove(poured, on, 'on');
    const { seeds, sd } = await uncertainBalance(tx, poured);
    if (seeds === 0) throw fieldError({ otherPacketId: `${poured.number} is empty: there is nothing to pour.` });
    const warnings = {
      ...(input.keepAnyway ? {} : agedMore(kept, poured, today)),
      ...(input.loseDuplicate || kept.role === 'safety-duplicate' ? {} : await lastDuplicate(poured)),
    };
    if (Object.keys(warnings).length > 0) throw fieldError(warnings);

    const line = { on, reason: 'merge', byId: person.id, seedsSd: sd, pairId: newId() };
    await tx.movement.create({
      data: { ...line, id: newId(), packetId: poured.id, seeds: -seeds, note: `into ${kept.number}` },
    });
    await tx.movement.create({
      data: { ...line, id: newId(), packetId: kept.id, seeds, note: `out of ${poured.number}` },
    });
    rejudge([kept.lot.id]);
    await audit({
      entity: 'packet',
      entityId: kept.id,
      summary: `Poured packet ${poured.number} (${seeds} seeds) into packet ${kept.number} of lot ${kept.lot.number}, whose storage history stands for all of it`,
      after: { emptied: poured.id, seeds, keptAnyway: input.keepAnyway },
    });
    return { lotNumber: kept.lot.number, number: kept.number };

    async function lastDuplicate({ id, number, lot }: PacketInHand): Promise<Record<string, string>> {
      if (!(await isOnlySafetyDuplicate(tx, id))) return {};
      return {
        otherPacketId: `${number} is the only safety duplicate of lot ${lot.number}.`,
        loseDuplicate: 'Tick this if the lot shall have none.',
      };
    }
  },
});

/** Both packets' ageing today, as the forecast reckons it. What is read here is what the transaction sees: it holds the write lock. */
function agedMore(kept: PacketInHand, poured: PacketInHand, today: string): Record<string, string> {
  const { rows } = connections();
  const [lot] = loadLots(rows, [kept.lot.id]);
  const crop = loadCropJudging(rows, [kept.lot.accession.cropId]).get(kept.lot.accession.cropId);
  if (!lot || !crop) throw new Error(`lot ${kept.lot.number} vanished while it was read`);
  const climates = storeClimates(rows);
  const probitsOf = ({ id }: PacketInHand): number | null => {
    const packet = lot.packets.find((one) => one.id === id);
    const ageing = packet ? ageingOfPacket(packet, crop, climates, today) : null;
    return ageing?.ok ? ageing.probitsAt(toEpochDay(today)) : null;
  };
  const [keptProbits, pouredProbits] = [probitsOf(kept), probitsOf(poured)];
  if (judgeMerge(keptProbits, pouredProbits) === 'fine') return {};
  const why =
    pouredProbits === null
      ? `What the seed of ${poured.number} has been through cannot be reckoned`
      : `The seed of ${poured.number} has aged more in store than that of ${kept.number}`;
  return {
    packetId: `${why}, and the packet that is kept tells the forecast what all the seed has been through. Keep ${poured.number} instead.`,
    keepAnyway: `Tick this to keep ${kept.number} anyway: the forecast will be too good for part of the seed.`,
  };
}
