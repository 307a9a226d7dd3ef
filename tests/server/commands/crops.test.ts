import { describe, expect, it } from 'vitest';
import { createCrop } from '@/lib/server/commands/create-crop';
import { updateCrop } from '@/lib/server/commands/update-crop';
import { connections } from '@/lib/server/database/connections';
import { lastAuditLine } from '@/tests/support/audit';
import { cropIdOf, makeAccession } from '@/tests/support/create-accession';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const skirret = {
  name: 'Skirret',
  scientificName: 'Sium sisarum',
  family: 'Apiaceae',
  pollination: 'insect',
  lifeCycle: 'perennial',
  storageBehaviour: 'unknown',
};
const stored = (id: string) =>
  connections().bulk.prepare(`SELECT * FROM "Crop" WHERE "id" = ?`).get(id) as Record<string, unknown>;
const constantsId = () =>
  (connections().bulk.prepare(`SELECT "id" FROM "LongevityConstants" ORDER BY "id"`).get() as { id: string }).id;

describe('createCrop', () => {
  it('adds a crop with percentages kept as proportions, and leaves an audit entry', async () => {
    const { id } = await createCrop(STEWARD, {
      ...skirret,
      thresholdKind: 'absolute',
      thresholdPercent: '60',
      emergencePercent: '55,5',
    });
    expect(stored(id)).toMatchObject({ thresholdValue: 0.6, emergence: 0.555, longevityConstantsId: null, version: 1 });
    expect(lastAuditLine()?.summary).toBe('Added crop Skirret (Sium sisarum)');
  });

  it('refuses a name that is there already, in any case', async () => {
    expect(await fieldMessage(createCrop(STEWARD, { ...skirret, name: 'leek' }), 'name')).toContain('Leek is already');
  });

  it('refuses half a threshold, half a prior, and figures that no crop has', async () => {
    const message = (input: object, field: string) =>
      fieldMessage(createCrop(STEWARD, { ...skirret, ...input }), field);
    expect(await message({ thresholdKind: 'absolute' }, 'thresholdPercent')).toContain('both or neither');
    expect(await message({ priorInitialMean: '1.75' }, 'priorInitialSd')).toContain('both or neither');
    expect(await message({ emergencePercent: '140' }, 'emergencePercent')).toContain('between 1 and 100');
    expect(await message({ sowingMonth: '13' }, 'sowingMonth')).toBeDefined();
    expect(await message({ plantsNeeded: '-4' }, 'plantsNeeded')).toBeDefined();
    expect(await message({ longevityConstantsId: 'no-such' }, 'longevityConstantsId')).toContain('choose others');
  });

  it('asks why constants of another species stand in', async () => {
    const input = { ...skirret, longevityConstantsId: constantsId(), constantsBorrowed: 'on' };
    expect(await fieldMessage(createCrop(STEWARD, input), 'borrowedBecause')).toContain('same genus');
    const { id } = await createCrop(STEWARD, { ...input, borrowedBecause: 'same family' });
    expect(stored(id)).toMatchObject({ constantsBorrowed: 1, borrowedBecause: 'same family' });
  });

  it('is for stewards', async () => {
    expect((await refusal(createCrop(VOLUNTEER, skirret))).code).toBe('not-allowed');
  });
});

describe('updateCrop', () => {
  it("sets the bank's own figures of a crop of the reference, and leaves what it is alone", async () => {
    const id = cropIdOf('Leek');
    const before = stored(id);
    await updateCrop(STEWARD, {
      id,
      version: 1,
      name: 'Onion grass',
      family: 'Poaceae',
      plantsNeeded: '60',
      sowingMonth: '3',
      longevityConstantsId: before.longevityConstantsId,
      constantsBorrowed: 'on',
      borrowedBecause: before.borrowedBecause,
    });
    expect(stored(id)).toMatchObject({
      name: 'Leek',
      family: before.family,
      plantsNeeded: 60,
      sowingMonth: 3,
      longevityConstantsId: before.longevityConstantsId,
      version: 2,
    });
    expect(lastAuditLine()?.summary).toBe(
      'Changed crop Leek: plants needed filled in with 60, sowing month filled in with 3',
    );
  });

  it('renames a crop that the bank added, in the lists too', async () => {
    const { id } = await createCrop(STEWARD, skirret);
    const accession = await makeAccession({ name: 'Sweet Root', cropId: id });
    await updateCrop(STEWARD, { ...skirret, id, version: 1, name: 'Skirwort' });
    expect(stored(id)).toMatchObject({ name: 'Skirwort' });
    expect(
      connections()
        .bulk.prepare(`SELECT "cropName", "searchText" FROM "AccessionJudgement" WHERE "accessionId" = ?`)
        .get(accession.id),
    ).toEqual({ cropName: 'Skirwort', searchText: expect.stringContaining('skirwort') });
    expect(await fieldMessage(updateCrop(STEWARD, { ...skirret, id, version: 2, name: 'ONION' }), 'name')).toContain(
      'Onion is already',
    );
  });

  it('refuses a save over a newer one and says what changed', async () => {
    const id = cropIdOf('Carrot');
    await updateCrop(STEWARD, { id, version: 1, plantsNeeded: '80' });
    const refused = await refusal(updateCrop(STEWARD, { id, version: 1, plantsNeeded: '20' }));
    expect(refused.code).toBe('conflict');
    expect(refused.userMessage).toContain('plants needed filled in with 80');
    expect(stored(id)).toMatchObject({ plantsNeeded: 80 });
  });
});
