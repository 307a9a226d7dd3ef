import Database from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { updateBank } from '@/lib/server/commands/update-bank';
import { connections, reader } from '@/lib/server/database/connections';
import { judgeLots } from '@/lib/server/judging/judge-lots';
import { judgeWhatIsStale } from '@/lib/server/judging/keep-fresh';
import { makeAccession } from '../../support/create-accession';
import { makeLot } from '../../support/create-lot';
import { importText } from '../../support/import-file';
import { STEWARD, VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

const judgementOf = (number: string) => reader().lotJudgement.findFirstOrThrow({ where: { lotNumber: number } });

describe('judging lots when their data change', () => {
  const bank = useTestBank({ fresh: 'each' });

  it('judges a new lot before the command returns', async () => {
    const { number } = await makeLot({ seedCount: '5000' });
    const judgement = await judgementOf(number);
    expect(judgement).toMatchObject({ judgedOn: '2026-11-25', seedsLeft: 5000, rescue: false });
    expect(judgement.viabilityMedian).toBeGreaterThan(0.9);
    expect(judgement.viabilityLower).toBeLessThan(judgement.viabilityMedian ?? 0);
    expect(judgement.testDueReason).toMatch(/never|test/i);
  });

  it('judges the accession by the lot that carries it', async () => {
    const accession = await makeAccession();
    await makeLot({ accession: accession.number, harvestedOn: '2008-09-01', storedOn: '2008-10-01', seedCount: '80' });
    const young = await makeLot({ accession: accession.number, seedCount: '9000' });
    const judged = await reader().accessionJudgement.findFirstOrThrow({ where: { accessionNumber: accession.number } });
    expect(judged).toMatchObject({ lots: 2, seedsLeft: 9080, keyLotNumber: young.number });
  });

  it('calls for rescue when what is left cannot raise the plants needed', async () => {
    const lot = await makeLot({ seedCount: '5000' });
    await takeSeedOut(VOLUNTEER, { packetId: lot.packetId, amount: '4990', unit: 'seeds', reason: 'sharing' });
    expect(await judgementOf(lot.number)).toMatchObject({ seedsLeft: 10, rescue: true, action: 'regrow' });
  });

  it('moves the line of every lot when the bank changes it', async () => {
    const lot = await makeLot();
    const before = await judgementOf(lot.number);
    const bank = {
      name: 'Bank',
      thresholdKind: 'absolute',
      thresholdValue: '60',
      sowingMonth: '4',
      emergence: '70',
      assurance: '95',
      version: '1',
    };
    await updateBank(STEWARD, bank);
    const after = await judgementOf(lot.number);
    expect(before.threshold).toBeGreaterThan(0.75);
    expect(after.threshold).toBe(0.6);
  });

  it('judges what an earlier day left behind', async () => {
    const lot = await makeLot();
    process.env.HILUM_TODAY = '2031-11-25';
    expect(await judgeWhatIsStale()).toBe(1);
    expect(await judgeWhatIsStale()).toBe(0);
    expect((await judgementOf(lot.number)).judgedOn).toBe('2031-11-25');
    process.env.HILUM_TODAY = '2026-11-25';
  });

  it('judges from what another program wrote while it was judging others', async () => {
    const numbers = Array.from({ length: 102 }, (_, index) => `B-${1000 + index}`);
    await importText(
      'accessions',
      ['Number;Name;Crop', ...numbers.map((number) => `${number};Row ${number};Leek`)].join('\n'),
    );
    await importText(
      'lots',
      ['Lot;Accession;Harvest;Isolation;Seeds;Container;MC %;Store']
        .concat(numbers.map((number) => `K${number};${number};2020-09-10;cage;1000;glass jar;7;Chest freezer`))
        .join('\n'),
    );
    const { bulk } = connections();
    const seedsLeft = bulk.prepare<[], number>(`SELECT "seedsLeft" FROM "LotJudgement" ORDER BY "lotNumber"`).pluck();
    expect(new Set(seedsLeft.all())).toEqual(new Set([1000]));
    const other = new Database(bank.file);
    const takeFromAll = () =>
      other.exec(
        `INSERT INTO "Movement" ("id", "packetId", "on", "reason", "seeds", "byId")
         SELECT 'other-' || "id", "id", '2026-11-25', 'sowing', -400, 'somebody' FROM "Packet"`,
      );
    let judged = 0;
    await judgeLots(bulk, 'all', '2026-11-25', (done) => {
      if (judged === 0) takeFromAll();
      judged = done;
    });
    other.close();
    expect(judged).toBe(102);
    expect(seedsLeft.all().filter((seeds) => seeds === 600)).toHaveLength(2);
  });
});
