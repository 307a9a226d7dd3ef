import { describe, expect, test } from 'vitest';
import { connections } from '@/lib/server/database/connections';
import { countRows } from '../../support/audit';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { heldIn, ledgerOf, writeLines } from '../../support/ledger';
import { VISITOR } from '../../support/people';
import { fieldMessage, refusal } from '../../support/refusal';
import { setTraysOf, trayNumbered, trayRow } from '../../support/set-tray';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const methodOf = async (crop: string) => {
  const method = await connections().reader.germinationMethod.findFirstOrThrow({ where: { crop: { name: crop } } });
  return { ...method, key: `${method.id}:0:0` };
};

describe('setting trays', () => {
  test('takes the seed out of each packet, lays out the dishes and gives numbers of the tests', async () => {
    const leek = await createLotWithPacket();
    const kale = await createLotWithPacket({ number: 'L-2021-004', crop: 'Kale', accessionName: 'Brannasay Curled' });
    const method = await methodOf('Kale');
    const { numbers } = await setTraysOf(
      [
        trayRow({ seedFrom: `packet:${leek.packetId}` }),
        {
          lot: kale.number,
          seedFrom: `packet:${kale.packetId}`,
          size: '4x25',
          method: method.key,
          countEveryDays: '4',
        },
      ],
      { place: 'incubator 1' },
    );
    expect(numbers).toEqual(['T-0001', 'T-0002']);
    expect(heldIn(leek.packetId)).toBe(900);
    expect(heldIn(kale.packetId)).toBe(900);
    const line = ledgerOf(kale.packetId).at(-1);
    expect(line).toMatchObject({
      on: '2026-11-18',
      reason: 'test',
      seeds: -100,
      seedsSd: 0,
      note: 'Germination test T-0002',
    });
    const tray = await trayNumbered('T-0002');
    expect(tray).toMatchObject({
      lotId: kale.lotId,
      packetId: kale.packetId,
      withdrawalId: line?.id,
      setOn: '2026-11-18',
      substrate: method.substrata.split(', ')[0],
      temperatures: '20-30',
      firstCountOn: '2026-11-21',
      finalCountOn: '2026-11-28',
      countEveryDays: 4,
      place: 'incubator 1',
      status: 'open',
      sequentialPlan: null,
    });
    expect(tray.seriesId).toBe(tray.id);
    expect(tray.dishes.map(({ position, seeds }) => [position, seeds])).toEqual([
      [1, 25],
      [2, 25],
      [3, 25],
      [4, 25],
    ]);
  });

  test('has every lot judged anew, since its seed is fewer', async () => {
    const lot = await createLotWithPacket();
    await setTraysOf([trayRow({ seedFrom: `packet:${lot.packetId}` })]);
    const judged = await connections().reader.lotJudgement.findUniqueOrThrow({ where: { lotId: lot.lotId } });
    expect(judged).toMatchObject({ seedsLeft: 900, judgedOn: '2026-11-25' });
  });

  test('days moist and cold come before the days of the method, and days written win over it', async () => {
    const { packetId, number } = await createLotWithPacket();
    const method = await methodOf('Leek');
    const { numbers } = await setTraysOf([
      { lot: number, seedFrom: `packet:${packetId}`, size: '2x25', method: method.key, prechillDays: '5' },
    ]);
    expect(method).toMatchObject({ firstCountDays: 6, finalCountDays: 14 });
    expect(await trayNumbered(numbers[0] ?? '')).toMatchObject({
      firstCountOn: '2026-11-29',
      finalCountOn: '2026-12-07',
      prechillDays: 5,
    });
    const again = { lot: number, seedFrom: `packet:${packetId}`, size: '2x25', method: method.key, anyway: 'on' };
    const short = await setTraysOf([{ ...again, finalCountDays: '4' }]);
    expect(await trayNumbered(short.numbers[0] ?? '')).toMatchObject({
      firstCountOn: '2026-11-22',
      finalCountOn: '2026-11-22',
    });
  });

  test('in groups: forty seeds now, and the plan is kept with the tray', async () => {
    const { packetId } = await createLotWithPacket();
    const row = { seedFrom: `packet:${packetId}`, size: 'groups', line: '0.85', mostSeeds: '400' };
    const { numbers } = await setTraysOf([trayRow({ ...row, dishes: '', seedsEach: '' })]);
    const tray = await trayNumbered(numbers[0] ?? '');
    expect(tray.dishes.map(({ seeds }) => seeds)).toEqual([20, 20]);
    expect(tray.groupNumber).toBe(1);
    expect(JSON.parse(tray.sequentialPlan ?? '')).toMatchObject({
      line: 0.85,
      looks: [{ seedsTested: 40 }, {}, {}, {}, {}, {}],
    });
    expect(heldIn(packetId)).toBe(960);
  });

  test('seed that was taken out before is named, and nothing is taken out again', async () => {
    const { packetId } = await createLotWithPacket();
    writeLines({ id: 'taken-before', packetId, on: '2026-11-17', reason: 'test', seeds: -120 });
    await setTraysOf([trayRow({ seedFrom: 'taken:taken-before' })]);
    expect(heldIn(packetId)).toBe(880);
    expect(await trayNumbered('T-0001')).toMatchObject({ withdrawalId: 'taken-before', packetId });
    const again = setTraysOf([trayRow({ seedFrom: 'taken:taken-before', anyway: 'on' })]);
    expect(await fieldMessage(again, 'trays.0.seedFrom')).toContain('T-0001');
  });

  test('a number that a test or a tray has is not given out again', async () => {
    const { packetId } = await createLotWithPacket();
    await setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })]);
    await connections().writer.numberSeries.update({ where: { series: 'T' }, data: { last: 0 } });
    expect((await recordTest()).number).toBe('T-0002');
    await connections().writer.numberSeries.update({ where: { series: 'T' }, data: { last: 0 } });
    const { numbers } = await setTraysOf([trayRow({ seedFrom: `packet:${packetId}`, anyway: 'on' })]);
    expect(numbers).toEqual(['T-0003']);
  });
});

describe('what cannot be', () => {
  test('one packet overdrawn refuses all, beside its own field, and writes nothing', async () => {
    const full = await createLotWithPacket();
    const empty = await createLotWithPacket({ number: 'L-2021-004', seeds: 60, accessionName: 'Sound Blue' });
    const audit = countRows('AuditEntry');
    const attempt = setTraysOf([
      trayRow({ seedFrom: `packet:${full.packetId}` }),
      trayRow({ lot: empty.number, seedFrom: `packet:${empty.packetId}` }),
    ]);
    const { fieldErrors } = await refusal(attempt);
    expect(Object.keys(fieldErrors)).toEqual(['trays.1.seedFrom']);
    expect(fieldErrors['trays.1.seedFrom']).toMatch(/holds 60 seeds, and this takes 100/);
    expect([countRows('Tray'), countRows('TrayDish'), countRows('AuditEntry')]).toEqual([0, 0, audit]);
    expect(heldIn(full.packetId)).toBe(1000);
  });

  test('everything that is wrong is said at once, each beside its field', async () => {
    const lot = await createLotWithPacket({ harvestedOn: '2026-11-20' });
    const other = await createLotWithPacket({ number: 'L-2021-004', accessionName: 'Sound Blue' });
    const barley = await methodOf('Barley');
    const from = `packet:${other.packetId}`;
    const row = trayRow({ lot: other.number, seedFrom: from });
    const { fieldErrors } = await refusal(
      setTraysOf([
        trayRow({ seedFrom: `packet:${lot.packetId}` }),
        trayRow({ lot: 'L-1999-001', seedFrom: from }),
        { ...row, method: barley.key },
        row,
      ]),
    );
    expect(Object.keys(fieldErrors).sort()).toEqual(['setOn', 'trays.1.lot', 'trays.2.method', 'trays.3.lot']);
    const foreign = setTraysOf([trayRow({ lot: other.number, seedFrom: `packet:${lot.packetId}` })]);
    expect(await fieldMessage(foreign, 'trays.0.seedFrom')).toContain(other.number);
  });

  test('a lot whose test is under way is set again only when that is ticked', async () => {
    const { packetId } = await createLotWithPacket();
    const row = trayRow({ seedFrom: `packet:${packetId}` });
    await setTraysOf([row]);
    expect(await fieldMessage(setTraysOf([row]), 'trays.0.anyway')).toContain('T-0001');
    expect((await setTraysOf([{ ...row, anyway: 'on' }])).numbers).toEqual(['T-0002']);
  });

  test('days that no method says must be written', async () => {
    const { packetId } = await createLotWithPacket();
    const row = { lot: 'L-2020-001', seedFrom: `packet:${packetId}`, size: '2x25' };
    expect(await fieldMessage(setTraysOf([row]), 'trays.0.finalCountDays')).toMatch(/after how many days/);
    const { numbers } = await setTraysOf([{ ...row, finalCountDays: '10' }]);
    expect(await trayNumbered(numbers[0] ?? '')).toMatchObject({
      firstCountOn: '2026-11-28',
      finalCountOn: '2026-11-28',
      substrate: null,
    });
    const late = setTraysOf([{ ...row, anyway: 'on', firstCountDays: '10', method: (await methodOf('Kale')).key }]);
    expect((await refusal(late)).fieldErrors).toHaveProperty('trays.0.method');
  });

  test('a packet filled after the day is not where the seed came from', async () => {
    const { packetId } = await createLotWithPacket({ filledOn: '2026-11-20', harvestedOn: '2026-09-01' });
    const message = await fieldMessage(setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })]), 'trays.0.seedFrom');
    expect(message).toContain('2026-11-20');
  });

  test('is not for visitors', async () => {
    const { packetId } = await createLotWithPacket();
    const attempt = setTraysOf([trayRow({ seedFrom: `packet:${packetId}` })], {}, VISITOR);
    expect((await refusal(attempt)).code).toBe('not-allowed');
  });
});
