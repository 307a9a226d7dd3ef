import { createRequestSchema } from '@/lib/schemas/sharing-request';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';

/** Writes down that somebody asks for seed. What goes to them is chosen afterwards. */
export const createRequest = defineCommand({
  name: 'create-request',
  role: 'volunteer',
  schema: createRequestSchema,
  async run({ tx, person, today, audit }, input): Promise<{ id: string; number: string }> {
    const number = await nextNumber(tx, 'R', 4, async (taken) =>
      Boolean(await tx.sharingRequest.findUnique({ where: { number: taken }, select: { id: true } })),
    );
    const id = newId();
    await tx.sharingRequest.create({
      data: { id, number, ...input, askedOn: input.askedOn ?? today, byId: person.id },
    });
    await audit({
      entity: 'sharing request',
      entityId: id,
      summary: `Opened request ${number} of ${input.recipient}`,
      after: { ...input, number, version: 1 },
    });
    return { id, number };
  },
});
