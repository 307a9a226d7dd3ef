import { updateAccessionSchema } from '@/lib/schemas/accession';
import { notFound } from '../app-error';
import { defineCommand } from './command';
import { describeChanges } from './describe-changes';
import { listAccessionWithoutSeed } from './list-accession-without-seed';
import { requireCrop } from './require-crop';
import { refuseStale } from './stale-version';

const LABELS = {
  name: 'name',
  crop: 'crop',
  donor: 'donor',
  acquiredOn: 'date acquired',
  origin: 'origin',
  notes: 'notes',
  sharing: 'sharing',
  sharingTerms: 'terms of sharing',
};

/** Corrects what is known of an accession. Its number stays: it is on the jars. */
export const updateAccession = defineCommand({
  name: 'update-accession',
  role: 'steward',
  schema: updateAccessionSchema,
  async run({ tx, audit, rejudge }, input): Promise<{ number: string }> {
    const { id, version, ...fields } = input;
    const stored = await tx.accession.findUnique({
      where: { id },
      select: {
        number: true,
        name: true,
        cropId: true,
        donor: true,
        acquiredOn: true,
        origin: true,
        notes: true,
        sharing: true,
        sharingTerms: true,
        version: true,
        crop: { select: { name: true } },
        lots: { select: { id: true } },
      },
    });
    if (!stored) throw notFound('This accession');
    const { number, crop, lots, ...was } = stored;
    const record = { entity: 'accession', entityId: id };
    await refuseStale(tx, { ...record, called: `Accession ${number}` }, version, was.version, LABELS);
    const before = { ...was, crop: crop.name };
    const after = {
      name: fields.name,
      cropId: fields.cropId,
      crop: await requireCrop(tx, fields.cropId),
      donor: fields.donor ?? null,
      acquiredOn: fields.acquiredOn ?? null,
      origin: fields.origin ?? null,
      notes: fields.notes ?? null,
      sharing: fields.sharing ?? was.sharing,
      sharingTerms: fields.sharing ? (fields.sharingTerms ?? null) : was.sharingTerms,
      version: version + 1,
    };
    const changes = describeChanges(before, after, LABELS);
    if (!changes) after.version = version;
    const { crop: _name, ...data } = after;
    await tx.accession.update({ where: { id }, data });
    await listAccessionWithoutSeed(tx, id);
    rejudge(lots.map((lot) => lot.id));
    await audit({ ...record, summary: `Changed accession ${number}: ${changes || 'nothing'}`, before, after });
    return { number };
  },
});
