import type { Prisma } from '@/generated/prisma/client';
import { COMMON_FORMATS } from '@/lib/domain/labels/common-formats';
import { fieldError } from './field-error';

/** Two formats of one name could not be told apart when labels are printed. */
export async function requireFreeFormatName(
  tx: Prisma.TransactionClient,
  name: string,
  ownId: string | null,
): Promise<void> {
  const other = await tx.labelFormat.findUnique({ where: { name }, select: { id: true } });
  if ((other && other.id !== ownId) || COMMON_FORMATS.some((format) => format.name === name)) {
    throw fieldError({ name: `There is a format ${name} already: choose another name.` });
  }
}
