import { describe, expect, it } from 'vitest';
import { logCleanedLot } from '@/lib/server/commands/log-cleaned-lot';
import { updateLot } from '@/lib/server/commands/update-lot';
import { connections } from '@/lib/server/database/connections';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { makeAccession } from '@/tests/support/create-accession';
import { cleanedLot, makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VISITOR, VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const row = (table: string, where: string, value: string) =>
  connections().bulk.prepare(`SELECT * FROM "${table}" WHERE "${where}" = ?`).get(value) as Record<string, unknown>;

describe('logCleanedLot', () => {
  it('makes the lot, its first packet, where that lies and the deposit, with one audit entry', async () => {
    const { name, id: storeId } = await makeStore();
    const made = await makeLot({ storeId, cleanWeightG: '2,5' });
    expect(made).toMatchObject({ number: 'L-2026-001', packetNumber: 'P-00001', seeds: 1000, estimated: false });
    expect(row('Lot', 'id', made.lotId)).toMatchObject({
      harvestedOn: '2026-09-20',
      isolation: 'bagged flowers',
      cleanWeightG: 2.5,
      thousandSeedWeightG: 2.5,
      generation: 0,
    });
    expect(row('Placement', 'packetId', made.packetId)).toMatchObject({
      storeId,
      from: '2026-10-05',
      container: 'glass-jar',
      moisturePercent: 7.5,
    });
    expect(row('Movement', 'packetId', made.packetId)).toMatchObject({
      on: '2026-10-05',
      reason: 'deposit',
      seeds: 1000,
      grams: 2.5,
      byId: VOLUNTEER.id,
    });
    expect(lastAuditLine()).toMatchObject({
      command: 'log-cleaned-lot',
      entity: 'lot',
      entityId: made.lotId,
      summary: `Stored lot L-2026-001 of Skerry Winter: 1000 seeds as packet P-00001 in ${name}`,
    });
  });

  it('numbers lots by their harvest year', async () => {
    expect((await makeLot()).number).toBe('L-2026-001');
    expect((await makeLot({ harvestedOn: '2025-08-01' })).number).toBe('L-2025-001');
    expect((await makeLot()).number).toBe('L-2026-002');
  });

  it('finds the accession by number or exact name in any case, and asks for the number when a name is shared', async () => {
    const first = await makeAccession({ name: 'Holm Yellow' });
    expect((await makeLot({ accession: 'holm yellow' })).number).toBe('L-2026-001');
    expect((await makeLot({ accession: first.number.toLowerCase() })).number).toBe('L-2026-002');
    await makeAccession({ name: 'HOLM YELLOW' });
    const shared = await fieldMessage(makeLot({ accession: 'Holm Yellow' }), 'accession');
    expect(shared).toContain('A-0001, A-0002');
    expect(await fieldMessage(makeLot({ accession: 'Holm' }), 'accession')).toContain('“Holm”');
  });

  it('counts a weight by the thousand-seed weight', async () => {
    const made = await makeLot({ seedCount: '', cleanWeightG: '10', thousandSeedWeightG: '2.5' });
    expect(made).toMatchObject({ seeds: 4000, estimated: false });
  });

  it("estimates a bare weight by the crop's usual seed, and says so in the ledger and the audit", async () => {
    const made = await makeLot({ seedCount: '', cleanWeightG: '10' });
    // Leek: 395 seeds a gram (7 CFR 201.46, table of seeds per gram).
    expect(made).toMatchObject({ seeds: 3950, estimated: true });
    expect(row('Lot', 'id', made.lotId).thousandSeedWeightG).toBeNull();
    expect(row('Movement', 'packetId', made.packetId).note).toContain('estimated at 395 seeds a gram');
    expect(lastAuditLine()?.summary).toContain('estimated');
  });

  it('asks for a weight or a count when there is neither', async () => {
    expect(await fieldMessage(makeLot({ seedCount: '' }), 'cleanWeightG')).toContain('Weigh the seed or count it');
  });

  it('refuses count and weights that cannot all be right', async () => {
    const disagree = makeLot({ seedCount: '1000', cleanWeightG: '10', thousandSeedWeightG: '2.5' });
    expect(await fieldMessage(disagree, 'seedCount')).toContain('about 4000 seeds');
  });

  it('refuses a count that is no packet, a weight below one seed, and other absurd values beside their fields', async () => {
    const message = (input: object, field: string) => fieldMessage(makeLot({ ...input }), field);
    expect(await message({ moisturePercent: '140' }, 'moisturePercent')).toContain('between 0.5 and 60');
    expect(await message({ harvestedOn: '2027-01-01' }, 'harvestedOn')).toContain('after today');
    expect(await message({ storedOn: '2026-09-19' }, 'storedOn')).toContain('before it is harvested');
    expect(await message({ seedCount: '0' }, 'seedCount')).toBeDefined();
    expect(await message({ seedCount: '12.5' }, 'seedCount')).toContain('whole number');
    expect(await message({ isolation: 'hope' }, 'isolation')).toBe('Choose the isolation.');
    expect(await message({ container: '' }, 'container')).toBe('Choose the container.');
    expect(await message({ storeId: 'no-such-store' }, 'storeId')).toContain('choose another');
    const tiny = { seedCount: '', cleanWeightG: '0.001', thousandSeedWeightG: '300' };
    expect(await message(tiny, 'cleanWeightG')).toContain('less than one seed');
  });

  it('refuses to freeze moist seed until somebody says that it is meant', async () => {
    const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
    const moist = { storeId: freezer.id, moisturePercent: '14.5' };
    const refused = await refusal(makeLot(moist));
    expect(refused.fieldErrors.moisturePercent).toContain('Freezing can kill seed');
    expect(refused.fieldErrors.storeAnyway).toContain('Freezer');
    expect((await makeLot({ ...moist, storeAnyway: 'on' })).seeds).toBe(1000);
    const inPaper = { ...moist, container: 'paper-envelope' };
    expect((await makeLot({ ...inPaper, moisturePercent: '14' })).seeds).toBe(1000);
    expect((await makeLot({ ...inPaper, storeId: (await makeStore()).id })).seeds).toBe(1000);
  });

  it('refuses to seal seed that is too moist to keep, until somebody says that it is meant', async () => {
    const refused = await refusal(makeLot({ moisturePercent: '10' }));
    expect(refused.fieldErrors.moisturePercent).toContain('too moist to seal');
    expect(refused.fieldErrors.storeAnyway).toContain('cannot be dried');
    expect((await makeLot({ moisturePercent: '10', storeAnyway: 'on' })).seeds).toBe(1000);
  });

  it('refuses a lot number that is in use and writes nothing at all', async () => {
    await makeLot({ lotNumber: 'Jar 7' });
    const before = ['Lot', 'Packet', 'Placement', 'Movement'].map(countRows);
    expect(await fieldMessage(makeLot({ lotNumber: 'Jar 7' }), 'lotNumber')).toContain("another lot's number");
    expect(['Lot', 'Packet', 'Placement', 'Movement'].map(countRows)).toEqual(before);
  });

  it('is for volunteers and stewards', async () => {
    const input = cleanedLot({ accession: (await makeAccession()).number, storeId: (await makeStore()).id });
    expect((await refusal(logCleanedLot(VISITOR, input))).code).toBe('not-allowed');
    expect((await refusal(logCleanedLot(null, input))).code).toBe('sign-in-needed');
  });
});

describe('updateLot', () => {
  const change = (id: string, version: number, overrides: Record<string, unknown> = {}) =>
    updateLot(VOLUNTEER, { id, version, harvestedOn: '2026-09-20', isolation: 'cage', ...overrides });

  it('changes what is known of a lot and says what changed', async () => {
    const { lotId } = await makeLot();
    await change(lotId, 1, { plantsHarvested: '40', treatment: 'thiram' });
    expect(row('Lot', 'id', lotId)).toMatchObject({ isolation: 'cage', plantsHarvested: 40, version: 2 });
    expect(lastAuditLine()?.summary).toBe(
      'Changed lot L-2026-001: isolation from “bagged flowers” to “cage”, plants harvested filled in with 40, treatment filled in with “thiram”',
    );
  });

  it('refuses a harvest after the seed was stored', async () => {
    const { lotId } = await makeLot();
    expect(await fieldMessage(change(lotId, 1, { harvestedOn: '2026-10-06' }), 'harvestedOn')).toContain('2026-10-05');
  });

  it('refuses a save over a newer one, and an unknown lot', async () => {
    const { lotId } = await makeLot();
    await change(lotId, 1);
    const refused = await refusal(change(lotId, 1, { isolation: 'none' }));
    expect(refused.code).toBe('conflict');
    expect(refused.userMessage).toContain('Test volunteer changed isolation from “bagged flowers” to “cage”');
    expect((await refusal(change('no-such-lot', 1))).code).toBe('not-found');
  });
});
