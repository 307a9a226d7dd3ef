import { beforeAll, describe, expect, it } from 'vitest';
import { reader } from '@/lib/server/database/connections';
import {
  findLabelledPackets,
  findPacketNumbersToLabel,
  findPacketsToLabel,
  type PacketsWanted,
} from '@/lib/server/queries/packet-labels';
import { findByCode } from '@/lib/server/queries/scanned';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { recordTest } from '@/tests/support/create-tested-lot';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();

const ANY = { q: '', store: '', lots: [] };
const numbers: Record<string, string> = {};
let freezer = '';
let box = '';

beforeAll(async () => {
  const outer = await makeStore({ name: 'Freezer A' });
  const inner = await makeStore({ name: 'Box 7', parentId: outer.id });
  freezer = outer.id;
  box = inner.id;
  const lots = {
    boxed: await makeLot({ storeId: box, lotNumber: 'L-2026-101', treatment: 'thiram' }),
    loose: await makeLot({ storeId: freezer, lotNumber: 'Holm 19/3' }),
    elsewhere: await makeLot({ lotNumber: 'L-2026-103' }),
  };
  for (const [name, lot] of Object.entries(lots)) {
    const packet = await reader().packet.findFirstOrThrow({ where: { lot: { number: lot.number } } });
    numbers[name] = packet.number;
    if (name === 'boxed') await recordTest({ lot: lot.number, setOn: '2026-10-20', finishedOn: '2026-11-03' });
  }
});

const found = async (wanted: Partial<PacketsWanted>) =>
  (await findPacketsToLabel({ ...ANY, ...wanted }, 1)).rows.map((row) => row.packetNumber).sort();
const of = (...names: string[]) => names.map((name) => numbers[name]).sort();

describe('packets to label', () => {
  it('in a store are those in it and in the stores inside it', async () => {
    expect(await found({ store: freezer })).toEqual(of('boxed', 'loose'));
    expect(await found({ store: box })).toEqual(of('boxed'));
  });

  it('are found by lot numbers, by a packet’s number in any writing, and by words', async () => {
    expect(await found({ lots: ['Holm 19/3', 'L-2026-103'] })).toEqual(of('loose', 'elsewhere'));
    expect(await found({ q: numbers.boxed?.toLowerCase().replace('-', ' ') ?? '' })).toEqual(of('boxed'));
    expect(await found({ q: 'holm 19/3' })).toEqual(of('loose'));
    expect(await found({ q: 'nothing of the kind' })).toEqual([]);
  });

  it('all at once are the same as page by page', async () => {
    expect((await findPacketNumbersToLabel({ ...ANY, store: freezer })).sort()).toEqual(of('boxed', 'loose'));
  });
});

describe('what stands on labels', () => {
  it('is in the order asked, with the whole place and the last test; unknown numbers are passed over', async () => {
    const labelled = await findLabelledPackets([numbers.loose ?? '', 'P-99999', numbers.boxed ?? '']);
    expect(labelled.map((packet) => packet.packetNumber)).toEqual([numbers.loose, numbers.boxed]);
    expect(labelled[1]).toMatchObject({
      lotNumber: 'L-2026-101',
      harvestedOn: '2026-09-20',
      place: 'Freezer A › Box 7',
      treatment: 'thiram',
      role: 'active',
    });
    expect(labelled[1]?.germination).toEqual({ germinated: 81, sown: 100, testedOn: '2026-11-03' });
    expect(labelled[0]).toMatchObject({ place: 'Freezer A', germination: null, treatment: null });
  });
});

describe('what was scanned', () => {
  it('is a packet with its seed and place, a lot with its packets, or nothing', async () => {
    expect(await findByCode(`https://old.example/p/${numbers.loose}`)).toMatchObject({
      kind: 'packet',
      number: numbers.loose,
      lotNumber: 'Holm 19/3',
      place: 'Freezer A',
      seeds: 1000,
    });
    expect(await findByCode('l-2026-103')).toMatchObject({ kind: 'lot', number: 'L-2026-103', seeds: 1000 });
    // a number of the bank's own, as it stands on the label
    expect(await findByCode('Holm 19/3')).toMatchObject({ kind: 'lot', packets: [{ number: numbers.loose }] });
    expect(await findByCode('P-99999')).toBeNull();
    expect(await findByCode('kale')).toBeNull();
  });
});
