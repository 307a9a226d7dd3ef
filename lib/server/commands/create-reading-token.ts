import 'server-only';
import { createReadingTokenSchema } from '@/lib/schemas/reading-token';
import { notFound } from '../app-error';
import { hashIssuedSecret, newIssuedSecret } from '../auth/issued-secret';
import { newId } from '../new-id';
import { defineCommand } from './command';

/** Makes a token with which a script sends readings of one store. It is shown once; only its hash is kept. */
export const createReadingToken = defineCommand({
  name: 'create-reading-token',
  role: 'steward',
  schema: createReadingTokenSchema,
  async run({ tx, person, audit }, { storeId, name }): Promise<{ id: string; storeId: string; token: string }> {
    const store = await tx.store.findUnique({ where: { id: storeId }, select: { name: true } });
    if (!store) throw notFound('This store');
    const token = newIssuedSecret('hilum-readings-');
    const id = newId();
    await tx.readingToken.create({ data: { id, storeId, name, hash: hashIssuedSecret(token), byId: person.id } });
    await audit({
      entity: 'store',
      entityId: storeId,
      summary: `Made token ${name}, with which a script sends readings of store ${store.name}`,
      after: { tokenId: id, name },
    });
    return { id, storeId, token };
  },
});
