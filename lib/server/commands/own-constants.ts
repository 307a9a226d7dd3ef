import type { Prisma } from '@/generated/prisma/client';
import { newId } from '../new-id';
import type { CommandContext } from './command';
import { fieldError } from './field-error';

/** Everything about constants of the bank's own but their id and mark. */
export type OwnConstants = Omit<Prisma.LongevityConstantsUncheckedCreateInput, 'id' | 'mark' | 'crops'>;

/**
 * Adds longevity constants under the mark "bank's own".
 *
 * @throws AppError beside `name` when other constants have it
 */
export async function addOwnConstants(
  { tx, audit }: Pick<CommandContext, 'tx' | 'audit'>,
  constants: OwnConstants,
): Promise<{ id: string }> {
  const taken = await tx.longevityConstants.findUnique({ where: { name: constants.name }, select: { id: true } });
  if (taken) throw fieldError({ name: 'Other constants have this name: add where these come from, or the year.' });
  const id = newId();
  const data = { ...constants, mark: "bank's own" };
  await tx.longevityConstants.create({ data: { id, ...data } });
  await audit({
    entity: 'longevity constants',
    entityId: id,
    summary: `Added longevity constants ${constants.name} (${constants.species})`,
    after: data,
  });
  return { id };
}
