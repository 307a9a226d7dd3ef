import { expect, it } from 'vitest';
import { fitStorageExperiment } from '@/lib/domain/longevity/storage-experiment/fit-storage-experiment';
import { createStorageExperiment } from '@/lib/server/commands/create-storage-experiment';
import { deleteStorageExperiment } from '@/lib/server/commands/delete-storage-experiment';
import { saveExperimentConstants } from '@/lib/server/commands/save-experiment-constants';
import { updateStorageExperiment } from '@/lib/server/commands/update-storage-experiment';
import { connections } from '@/lib/server/database/connections';
import { findLongevityConstants } from '@/lib/server/queries/reference';
import {
  findConstantsNaming,
  findStorageExperiments,
  getStorageExperiment,
} from '@/lib/server/queries/storage-experiments';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { cropIdOf } from '@/tests/support/create-accession';
import { EXPERIMENT_TABLE, makeStorageExperiment } from '@/tests/support/create-storage-experiment';
import { STEWARD, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const lastAuditState = (side: 'before' | 'after') =>
  JSON.parse(
    (
      connections().bulk.prepare(`SELECT "${side}" AS state FROM "AuditEntry" ORDER BY "id" DESC LIMIT 1`).get() as {
        state: string;
      }
    ).state,
  );

it('takes in an experiment with its counts in their order, and logs every one', async () => {
  const { id } = await makeStorageExperiment();
  const stored = await getStorageExperiment(id);
  expect(stored).toMatchObject({ name: 'Leek in jars', species: 'Allium porrum', version: 1, crop: null });
  expect(stored?.rows).toHaveLength(16);
  expect(stored?.rows[1]).toEqual({
    ...{ lot: 'L-1', moisturePercent: 5, temperatureC: 35, days: 60, sown: 50, germinated: 44 },
  });
  expect(lastAuditLine()).toMatchObject({
    entity: 'storage experiment',
    entityId: id,
    summary: 'Added storage experiment Leek in jars (Allium porrum) with 16 counts',
  });
  expect(lastAuditState('after').rows).toEqual(stored?.rows);
  expect(await findStorageExperiments()).toMatchObject([{ id, counts: 16, seeds: 800, lots: 1, conditions: 4 }]);
});

it('takes a file, and the species of the chosen crop', async () => {
  const { id } = await makeStorageExperiment({
    ...{ table: new TextEncoder().encode(EXPERIMENT_TABLE), species: '', cropId: cropIdOf('Leek') },
  });
  expect(await getStorageExperiment(id)).toMatchObject({ crop: { name: 'Leek' } });
  expect((await getStorageExperiment(id))?.species).toMatch(/^Allium/);
});

it('takes all or nothing: one bad row is named by line and column and nothing is written', async () => {
  const table = EXPERIMENT_TABLE.replace('60;50;44', '60;50;51').replace('500;50;36', 'later;50;36');
  const message = await fieldMessage(makeStorageExperiment({ table }), 'table');
  expect(message?.split('\n')).toEqual([
    'Line 3, Germinated: 51 germinated of 50 sown: check both.',
    expect.stringContaining('Line 12, Days: Write a plain number'),
  ]);
  expect(countRows('StorageExperiment') + countRows('StorageExperimentRow')).toBe(0);
});

it('refuses what is missing, beside its field', async () => {
  expect(await fieldMessage(makeStorageExperiment({ name: ' ' }), 'name')).toBe('Fill this in.');
  expect(await fieldMessage(makeStorageExperiment({ species: '' }), 'species')).toContain('Choose a crop, or write');
  expect(await fieldMessage(makeStorageExperiment({ table: '  ' }), 'table')).toContain('Paste the counts');
  expect(await fieldMessage(makeStorageExperiment({ cropId: 'no-such-crop' }), 'cropId')).toContain('choose another');
  await makeStorageExperiment();
  expect(await fieldMessage(makeStorageExperiment({ name: 'leek IN jars' }), 'name')).toContain('Leek in jars already');
});

it('puts corrected counts in place of the old ones, which the log keeps', async () => {
  const { id } = await makeStorageExperiment();
  const table = EXPERIMENT_TABLE.replace('60;50;44', '60;50;43');
  await updateStorageExperiment(STEWARD, { id, version: 1, name: 'Leek in jars', species: 'Allium porrum', table });
  expect(lastAuditLine()?.summary).toBe('Changed storage experiment Leek in jars: counts corrected');
  expect(lastAuditState('before').rows[1].germinated).toBe(44);
  const stored = await getStorageExperiment(id);
  expect(stored?.version).toBe(2);
  expect(stored?.rows.map((row) => row.germinated)).toContain(43);
  expect(stored?.rows).toHaveLength(16);
});

it('refuses a save over a newer one and says what changed', async () => {
  const { id } = await makeStorageExperiment();
  const input = { id, version: 1, name: 'Leek in jars', species: 'Allium porrum', table: EXPERIMENT_TABLE };
  await updateStorageExperiment(STEWARD, { ...input, name: 'Leek 2026' });
  const refused = await refusal(updateStorageExperiment(STEWARD, { ...input, notes: 'mine' }));
  expect(refused.code).toBe('conflict');
  expect(refused.userMessage).toContain('name from “Leek in jars” to “Leek 2026”');
  const other = await refusal(deleteStorageExperiment(STEWARD, { id, version: 1, sure: 'on' }));
  expect(other.code).toBe('conflict');
});

it('removes an experiment only when told so, and the log keeps every count', async () => {
  const { id } = await makeStorageExperiment();
  expect(await fieldMessage(deleteStorageExperiment(STEWARD, { id, version: 1 }), 'sure')).toContain('Tick this');
  await deleteStorageExperiment(STEWARD, { id, version: 1, sure: 'on' });
  expect(countRows('StorageExperiment') + countRows('StorageExperimentRow')).toBe(0);
  expect(lastAuditLine()?.summary).toBe('Removed storage experiment Leek in jars with its 16 counts');
  expect(lastAuditState('before').rows).toHaveLength(16);
  expect((await refusal(deleteStorageExperiment(STEWARD, { id, version: 1, sure: 'on' }))).code).toBe('not-found');
});

it('saves its constants as the bank’s own, with errors, range and where they come from', async () => {
  const { id: experimentId } = await makeStorageExperiment();
  const input = { experimentId, version: 1, name: 'Leek, our jars', coefficients: 'fixed' };
  const { id } = await saveExperimentConstants(STEWARD, input);
  const saved = (await findLongevityConstants()).find((row) => row.id === id);
  const fit = fitStorageExperiment((await getStorageExperiment(experimentId))?.rows ?? []);
  if (!fit.ok || !saved) throw new Error('nothing was saved');
  expect(saved).toMatchObject({
    ...{ name: 'Leek, our jars', species: 'Allium porrum', mark: "bank's own", CH: 0.0329, CQ: 0.000478 },
    ...{ moistureFromPercent: 5, moistureToPercent: 10, temperatureFromC: 20, temperatureToC: 35 },
  });
  expect(saved.KE).toBeCloseTo(fit.constants.KE, 4);
  expect(saved.CW).toBeCloseTo(fit.constants.CW, 4);
  expect(saved.standardErrorKE).toBeCloseTo(fit.standardErrors.KE, 4);
  expect(saved.standardErrorCW).toBeCloseTo(fit.standardErrors.CW, 4);
  expect(saved.source).toMatch(/^Storage experiment “Leek in jars” of this bank, fitted 2026-11-25: 16 counts in 4/);
  expect(saved.source).toContain('CH and CQ held at those common to eight species (from memory');
  expect(lastAuditLine()?.summary).toBe('Added longevity constants Leek, our jars (Allium porrum)');
  expect(await findConstantsNaming('Leek in jars')).toEqual([{ id, name: 'Leek, our jars' }]);
  expect(await fieldMessage(saveExperimentConstants(STEWARD, input), 'name')).toContain(
    'Other constants have this name',
  );
});

it('saves nothing where the experiment settles nothing, and says why', async () => {
  const { id: experimentId } = await makeStorageExperiment();
  const input = { experimentId, version: 1, name: 'Leek', coefficients: 'fitted' };
  const before = countRows('LongevityConstants');
  expect((await refusal(saveExperimentConstants(STEWARD, input))).userMessage).toContain('need three temperatures');
  expect((await refusal(saveExperimentConstants(STEWARD, { ...input, version: 2 }))).code).toBe('conflict');
  const swapped = EXPERIMENT_TABLE.replaceAll(';5;', ';x;').replaceAll(';10;', ';5;').replaceAll(';x;', ';10;');
  const other = await makeStorageExperiment({ name: 'Swapped', table: swapped });
  const refused = await refusal(
    saveExperimentConstants(STEWARD, { ...input, experimentId: other.id, coefficients: 'fixed' }),
  );
  expect(refused.userMessage).toContain('beyond what seed can show (KE, CW)');
  expect(countRows('LongevityConstants')).toBe(before);
});

it('is for stewards', async () => {
  const input = { name: 'Leek', species: 'Allium porrum', table: EXPERIMENT_TABLE };
  expect((await refusal(createStorageExperiment(VOLUNTEER, input))).code).toBe('not-allowed');
});
