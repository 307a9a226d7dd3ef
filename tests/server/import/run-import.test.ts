import { describe, expect, it } from 'vitest';
import { AppError } from '@/lib/server/app-error';
import { runImport } from '@/lib/server/commands/run-import';
import { connections, reader } from '@/lib/server/database/connections';
import { importText, uploadText } from '../../support/import-file';
import { STEWARD, VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

const ACCESSIONS = `Number;Name;Crop;Donor;Received
B-1;Wrack Line;Leek;a neighbour;03.02.2015
B-2;Tern Egg;Beans;harbour school;2016
B-3;Stoneless;Skirret;;
`;
const LOTS = `Lot;Accession;Harvest;Isolation;Weight g;TSW;MC %;Container;Store
K-1;B-1;12.09.2015;cage;25,5;2,5;8,9;glass jar;Chest freezer
K-2;B-1;10.09.2019;distance;12;;9,1;paper envelope;North larder
K-3;B-2;1.10.2016;none;200;400;;;
`;
const TESTS = `Lot;Date tested;Seeds sown;Germinated;Hard
K-1;15.01.2016;200;188;
K-1;15.01.2021;200;176;
K-3;20.11.2016;50;41;4
`;

async function refusal(promise: Promise<unknown>): Promise<AppError> {
  const error = await promise.then(
    () => null,
    (thrown: unknown) => thrown,
  );
  expect(error).toBeInstanceOf(AppError);
  return error as AppError;
}

describe('importing a spreadsheet', () => {
  useTestBank({ fresh: 'each' });

  it('takes over whether an accession may be shared, and on which terms', async () => {
    await importText(
      'accessions',
      'Number;Name;Crop;May be shared\nB-1;Wrack Line;Leek;no\nB-2;Tern Egg;Leek;not for sale\nB-3;Holm;Leek;\n',
    );
    const select = { sharing: true, sharingTerms: true } as const;
    expect(await reader().accession.findMany({ orderBy: { number: 'asc' }, select })).toEqual([
      { sharing: 'not', sharingTerms: null },
      { sharing: 'with-terms', sharingTerms: 'not for sale' },
      { sharing: 'may', sharingTerms: null },
    ]);
  });

  it('brings in accessions, their lots with packet, place and deposit, and the tests', async () => {
    await importText('accessions', ACCESSIONS);
    await importText('lots', LOTS);
    await importText('germination tests', TESTS);

    const lot = await reader().lot.findUniqueOrThrow({
      where: { number: 'K-1' },
      include: {
        accession: { include: { crop: true } },
        packets: { include: { placements: { include: { store: true } }, movements: true } },
        tests: { include: { replicates: true }, orderBy: { setOn: 'asc' } },
      },
    });
    expect(lot.accession).toMatchObject({
      number: 'B-1',
      name: 'Wrack Line',
      acquiredOn: '2015-02-03',
      crop: { name: 'Leek' },
    });
    expect(lot).toMatchObject({ harvestedOn: '2015-09-12', isolation: 'cage', thousandSeedWeightG: 2.5 });
    const [packet] = lot.packets;
    expect(packet?.movements).toMatchObject([{ reason: 'deposit', seeds: 10_200, grams: 25.5 }]);
    expect(packet?.placements).toMatchObject([
      {
        from: '2015-09-12',
        container: 'glass-jar',
        moisturePercent: 8.9,
        store: { name: 'Chest freezer', targetTemperatureC: -18 },
      },
    ]);
    expect(lot.tests.map((test) => [test.setOn, test.replicates[0]?.normal])).toEqual([
      ['2016-01-15', 188],
      ['2021-01-15', 176],
    ]);
  });

  it('estimates seeds from the usual seed of the crop when only a weight is known', async () => {
    await importText('accessions', ACCESSIONS);
    await importText('lots', LOTS);
    const packet = await reader().packet.findFirstOrThrow({
      where: { lot: { number: 'K-2' } },
      include: { movements: true },
    });
    // 12 g of leek at 395 seeds a gram (7 CFR 201.46)
    expect(packet.movements[0]?.seeds).toBe(4740);
    expect(packet.movements[0]?.note).toMatch(/estimated/);
  });

  it('puts lots without a place where they can be found', async () => {
    await importText('accessions', ACCESSIONS);
    await importText('lots', LOTS);
    const placement = await reader().placement.findFirstOrThrow({
      where: { packet: { lot: { number: 'K-3' } } },
      include: { store: true },
    });
    expect(placement.store.name).toBe('Place not known');
  });

  it('imports nothing when one row has a problem, and says where', async () => {
    await importText('accessions', ACCESSIONS);
    const upload = await uploadText('lots', LOTS.replace('12.09.2015', '31.02.2015'));
    const error = await refusal(runImport(STEWARD, { ...upload, createNames: 'on' }));
    expect(error.userMessage).toMatch(/Nothing was imported: 1 problem/);
    expect(await reader().lot.count()).toBe(0);
    expect(await reader().store.count()).toBe(0);
  });

  it('does not create crops or stores unasked', async () => {
    const upload = await uploadText('accessions', ACCESSIONS);
    const error = await refusal(runImport(STEWARD, upload));
    expect(error.userMessage).toMatch(/Skirret/);
    expect(await reader().accession.count()).toBe(0);
  });

  it('does not import the same file twice', async () => {
    const upload = await uploadText('accessions', ACCESSIONS);
    await runImport(STEWARD, { ...upload, createNames: 'on' });
    await refusal(runImport(STEWARD, { ...upload, createNames: 'on' }));
    expect(await reader().accession.count()).toBe(3);
  });

  it('leaves an audit line for each record and for the import', async () => {
    const upload = await uploadText('accessions', ACCESSIONS);
    await runImport(STEWARD, { ...upload, createNames: 'on' });
    const lines = await reader().auditEntry.findMany({ where: { command: 'run-import' }, orderBy: { id: 'asc' } });
    expect(lines.map((line) => line.entity)).toEqual(['crop', 'accession', 'accession', 'accession', 'import']);
  });

  it('is for stewards', async () => {
    const error = await refusal(runImport(VOLUNTEER, {}));
    expect(error.code).toBe('not-allowed');
  });

  it('shows nothing of an import to others until it is whole', async () => {
    const rows = Array.from({ length: 2000 }, (_, index) => `C-${index};Variety ${index};Leek`);
    const upload = await uploadText('accessions', `Number;Name;Crop\n${rows.join('\n')}\n`);
    const seen = new Set<number>();
    const importing = runImport(STEWARD, upload);
    let finished = false;
    void importing.finally(() => {
      finished = true;
    });
    while (!finished) {
      const row = connections().rows.prepare<[], { n: number }>(`SELECT COUNT(*) AS n FROM "Accession"`).get();
      seen.add(row?.n ?? -1);
      await new Promise((resolve) => setImmediate(resolve));
    }
    await importing;
    expect([...seen].filter((count) => count !== 0 && count !== 2000)).toEqual([]);
    expect(await reader().accession.count()).toBe(2000);
  });
});
