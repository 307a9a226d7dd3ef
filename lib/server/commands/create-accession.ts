import { createAccessionSchema } from '@/lib/schemas/accession';
import { newId } from '../new-id';
import { nextNumber } from '../next-number';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { listAccessionWithoutSeed } from './list-accession-without-seed';
import { requireCrop } from './require-crop';

/** Takes a variety or population into the collection. */
export const createAccession = defineCommand({
  name: 'create-accession',
  role: 'steward',
  schema: createAccessionSchema,
  async run({ tx, audit }, input): Promise<{ id: string; number: string }> {
    const cropName = await requireCrop(tx, input.cropId);
    const isTaken = async (number: string) =>
      (await tx.accession.findUnique({ where: { number }, select: { id: true } })) !== null;
    if (input.number && (await isTaken(input.number))) {
      throw fieldError({
        number: `${input.number} is another accession's number. Leave this empty to get the next free one.`,
      });
    }
    const number = input.number ?? (await nextNumber(tx, 'A', 4, isTaken));
    const id = newId();
    const { number: _typed, ...fields } = input;
    await tx.accession.create({ data: { id, number, ...fields } });
    await listAccessionWithoutSeed(tx, id);
    await audit({
      entity: 'accession',
      entityId: id,
      summary: `Took in accession ${number}, ${input.name} (${cropName})`,
      after: { ...input, number, version: 1 },
    });
    return { id, number };
  },
});
