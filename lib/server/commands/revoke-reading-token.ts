import 'server-only';
import { revokeReadingTokenSchema } from '@/lib/schemas/reading-token';
import { AppError, notFound } from '../app-error';
import { defineCommand } from './command';

/** A token that is revoked sends nothing more. What it has sent stays. */
export const revokeReadingToken = defineCommand({
  name: 'revoke-reading-token',
  role: 'steward',
  schema: revokeReadingTokenSchema,
  async run({ tx, audit }, { id }): Promise<{ id: string; storeId: string }> {
    const token = await tx.readingToken.findUnique({
      where: { id },
      select: { storeId: true, name: true, revokedAt: true },
    });
    if (!token) throw notFound('This token');
    if (token.revokedAt) throw new AppError('refused', 'This token has been revoked already.');
    await tx.readingToken.update({ where: { id }, data: { revokedAt: new Date() } });
    await audit({
      entity: 'store',
      entityId: token.storeId,
      summary: `Revoked token ${token.name}: its script sends nothing more`,
      before: { tokenId: id, revokedAt: null },
    });
    return { id, storeId: token.storeId };
  },
});
