import { createCropSchema } from '@/lib/schemas/crop';
import { newId } from '../new-id';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { requireConstants } from './require-constants';

/** Adds a crop that the reference does not know. */
export const createCrop = defineCommand({
  name: 'create-crop',
  role: 'steward',
  schema: createCropSchema,
  async run({ tx, audit }, input): Promise<{ id: string }> {
    const [same] = await tx.$queryRaw<{ name: string }[]>`
      SELECT "name" FROM "Crop" WHERE "name" = ${input.name} COLLATE NOCASE LIMIT 1`;
    if (same) throw fieldError({ name: `The crop ${same.name} is already there: use it, or choose another name.` });
    const { constants, ...chosen } = await requireConstants(tx, input);
    const { thresholdPercent, emergencePercent, ...fields } = input;
    const id = newId();
    const data = { ...fields, ...chosen, thresholdValue: thresholdPercent, emergence: emergencePercent };
    await tx.crop.create({ data: { id, ...data } });
    await audit({
      entity: 'crop',
      entityId: id,
      summary: `Added crop ${input.name} (${input.scientificName})`,
      after: { ...data, constants, version: 1 },
    });
    return { id };
  },
});
