import 'server-only';
import { createReadingTokenSchema } from '@/lib/schemas/reading-token';
import { notFound } from '../app-error';
import { newId } from '../new-id';
import { hashReadingToken, newReadingToken } from '../readings/reading-token-secret';
import { defineCommand } from './command';

/** Makes a token with which a script sends readings of one store. It is shown once; only its hash is kept. */
export const createReadingToken = defineCommand({
  name: 'create-reading-token',
  role: 'steward',
  schema: createReadingTokenSchema,
  async run({ tx, person, audit }, { storeId, name }): Promise<{ id: string; storeId: string; token: string }> {
    const store = await tx.store.findUnique({ where: { id: storeId }, select: { name: true } });
    if (!store) throw notFound('This store');
    const token = newReadingToken();
    const id = newId();
    await tx.readingToken.create({ data: { id, storeId, name, hash: hashReadingToken(token), byId: person.id } });
    await audit({
      entity: 'store',
      entityId: storeId,
      summary: `Made token ${name}, with which a script sends readings of store ${store.name}`,
      after: { tokenId: id, name },
    });
    return { id, storeId, token };
  },
});
