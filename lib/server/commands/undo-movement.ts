import { undoMovementSchema } from '@/lib/schemas/movement';
import { AppError, notFound } from '../app-error';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { packetBalance } from './packet-balance';

/** Takes back a line of a packet's ledger by a counter-entry that names it. Both lines stay. */
export const undoMovement = defineCommand({
  name: 'undo-movement',
  role: 'volunteer',
  schema: undoMovementSchema,
  async run({ tx, person, today, audit, rejudge }, input) {
    const movement = await tx.movement.findUnique({
      where: { id: input.movementId },
      select: {
        id: true,
        on: true,
        reason: true,
        seeds: true,
        grams: true,
        packetId: true,
        corrected: { select: { id: true } },
        packet: { select: { number: true, lot: { select: { id: true, number: true } } } },
      },
    });
    if (!movement) throw notFound('This entry');
    const { packet } = movement;
    if (movement.corrected) throw new AppError('conflict', 'This entry was taken back already.');
    if (movement.reason === 'correction') {
      throw new AppError('refused', 'This entry takes back another one. Enter the movement again instead.');
    }
    if (movement.reason === 'test') {
      throw new AppError('refused', 'This seed went into a germination test: correct the test, and the seed follows.');
    }
    const held = await packetBalance(tx, movement.packetId);
    if (held < movement.seeds) {
      throw new AppError(
        'refused',
        `Only ${held} of these ${movement.seeds} seeds are still in the packet. Take back what was taken out since, first.`,
      );
    }
    await tx.movement.create({
      data: {
        id: newId(),
        packetId: movement.packetId,
        on: today,
        reason: 'correction',
        seeds: -movement.seeds,
        grams: movement.grams === null ? null : -movement.grams,
        note: input.note,
        byId: person.id,
        correctsId: movement.id,
      },
    });
    rejudge([packet.lot.id]);
    await audit({
      entity: 'packet',
      entityId: movement.packetId,
      summary: `Took back the ${movement.reason} of ${Math.abs(movement.seeds)} seeds on ${movement.on}, packet ${packet.number} of lot ${packet.lot.number}`,
      before: { seeds: held },
      after: { seeds: held - movement.seeds },
    });
    return { lotNumber: packet.lot.number };
  },
});
