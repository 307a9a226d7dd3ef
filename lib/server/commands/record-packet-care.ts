import { isHermetic } from '@/lib/domain/stock/containers';
import { findDesiccant } from '@/lib/domain/stock/desiccants';
import { packetCareNow } from '@/lib/domain/stock/packet-care';
import { recordPacketCareSchema } from '@/lib/schemas/packet';
import { newId } from '../new-id';
import { careLines } from './care-lines';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { packetInHand } from './packet-in-hand';
import { desiccantLine } from './record-packing';

/** Writes down that a packet was sealed or opened, or that its desiccant was changed or taken out. */
export const recordPacketCare = defineCommand({
  name: 'record-packet-care',
  role: 'volunteer',
  schema: recordPacketCareSchema,
  async run({ tx, person, today, audit }, input) {
    const packet = await packetInHand(tx, input.packetId);
    const { last } = packet;
    const on = input.on ?? today;
    const filledOn = packet.placements[0]?.from;
    if (filledOn && on < filledOn) {
      throw fieldError({ on: `This packet was filled on ${filledOn}: choose that day or later.` });
    }
    const lines = await careLines(tx, packet.id);
    const lastOn = lines.at(-1)?.on;
    if (lastOn && on < lastOn) {
      throw fieldError({ on: `Something was written down for ${lastOn} already: choose that day or later.` });
    }
    const hermetic = last !== null && isHermetic(last.container);
    const care = packetCareNow(lines, hermetic);
    if (input.what !== 'desiccant' && !hermetic) {
      throw fieldError({
        what: 'This container lets air in: there is nothing to seal or open. Repack the seed into one that seals.',
      });
    }
    if (input.what === 'opened' && care.openSince) {
      throw fieldError({ what: `It has stood open since ${care.openSince}: seal it, or leave it.` });
    }
    if (input.what === 'desiccant' && !input.desiccant && !care.desiccant) {
      throw fieldError({ desiccant: 'There is none in it that could be taken out: choose what was put in.' });
    }
    const line = { packetId: packet.id, on, byId: person.id };
    await tx.packetCare.create({
      data: {
        ...(input.what === 'desiccant' && input.desiccant
          ? desiccantLine({ ...input, ...line, desiccant: input.desiccant })
          : { id: newId(), ...line, what: input.what }),
        note: input.note,
      },
    });
    await audit({
      entity: 'packet',
      entityId: packet.id,
      summary: `${inWords(input)} packet ${packet.number} of lot ${packet.lot.number} on ${on}`,
      after: { what: input.what, desiccant: input.desiccant ?? null },
    });
    return { lotNumber: packet.lot.number, number: packet.number };
  },
});

function inWords({ what, desiccant }: { what: string; desiccant?: string | undefined }): string {
  if (what === 'sealed') return 'Sealed';
  if (what === 'opened') return 'Opened';
  if (!desiccant) return 'Took the desiccant out of';
  return `Put ${findDesiccant(desiccant)?.label ?? desiccant} into`;
}
