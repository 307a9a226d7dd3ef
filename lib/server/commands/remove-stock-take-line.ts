import { removeStockTakeLineSchema } from '@/lib/schemas/stock-take';
import { AppError, notFound } from '../app-error';
import { defineCommand } from './command';
import { openStockTake } from './stock-take-in-hand';

/** Takes out of an open stock-take what was written down of a packet: it is to be looked at again. */
export const removeStockTakeLine = defineCommand({
  name: 'remove-stock-take-line',
  role: 'volunteer',
  schema: removeStockTakeLineSchema,
  async run({ tx, audit }, input) {
    const take = await openStockTake(tx, input.stockTakeId);
    const line = await tx.stockTakeLine.findUnique({
      where: { stockTakeId_packetId: { stockTakeId: take.id, packetId: input.packetId } },
      include: { packet: { select: { number: true } } },
    });
    if (!line) throw notFound('This line');
    const { packet, ...before } = line;
    if (line.version !== input.version) {
      throw new AppError(
        'conflict',
        `${packet.number} was written down anew meanwhile: look at it before you undo it.`,
      );
    }
    await tx.stockTakeLine.delete({ where: { id: line.id } });
    await audit({
      entity: 'stock-take',
      entityId: take.id,
      summary: `${take.number}: ${packet.number} is to be looked at again`,
      before,
    });
    return { stockTakeNumber: take.number, packetId: input.packetId };
  },
});
