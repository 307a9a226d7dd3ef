import 'server-only';
import { bankSchema } from '@/lib/schemas/bank';
import { AppError } from '../app-error';
import { defineCommand } from './command';

/** Changes how this bank decides; every lot is judged anew. */
export const updateBank = defineCommand({
  name: 'update-bank',
  role: 'steward',
  schema: bankSchema,
  async run({ tx, audit, rejudge }, { version, ...values }) {
    const before = await tx.bank.findUniqueOrThrow({ where: { id: 1 } });
    if (before.version !== version) {
      throw new AppError(
        'conflict',
        `Somebody else changed these settings while you were typing: the line is now at ${Math.round(before.thresholdValue * 100)} %, sowing in month ${before.sowingMonth}. Nothing of yours was saved; check and save again.`,
      );
    }
    const after = await tx.bank.update({
      where: { id: 1 },
      data: { ...values, address: values.address ?? null, version: version + 1 },
    });
    await audit({ entity: 'bank', entityId: '1', summary: 'Changed how this bank decides.', before, after });
    rejudge('all');
    return after;
  },
});
