import fc from 'fast-check';
import { beforeAll, expect, it } from 'vitest';
import { toEpochDay } from '@/lib/domain/calendar/calendar-date';
import { storageHistory } from '@/lib/domain/stock/storage-history';
import { AppError } from '@/lib/server/app-error';
import { mergePackets } from '@/lib/server/commands/merge-packets';
import { movePacket } from '@/lib/server/commands/move-packet';
import { repackPacket } from '@/lib/server/commands/repack-packet';
import { splitPacket } from '@/lib/server/commands/split-packet';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { reader } from '@/lib/server/database/connections';
import { makeAccession } from '@/tests/support/create-accession';
import { makeLot } from '@/tests/support/create-lot';
import { makeStore } from '@/tests/support/create-store';
import { VOLUNTEER } from '@/tests/support/people';
import { useTestBank } from '@/tests/support/test-bank';

/** Lots through whose packets a sequence is played, and its length: about ten seconds in all. */
const SEQUENCES = 10;
const ACTS_EACH = 14;
const SEED = 20261130;
const TODAY = '2026-11-25';
const SEEDS = 1000;

useTestBank({ today: TODAY });

let stores: string[] = [];
let accession = '';
/** What was really done in all sequences: a law about things that never happened proves nothing. */
const done = new Map<string, number>();

beforeAll(async () => {
  accession = (await makeAccession()).number;
  const freezer = await makeStore({ name: 'Freezer', kind: 'freezer', targetTemperatureC: '-18' });
  const partner = await makeStore({ name: 'Partner', kind: 'partner-bank', targetTemperatureC: '-20' });
  stores = [(await makeStore()).id, freezer.id, partner.id];
});

const which = fc.nat(99);
const day = fc.integer({ min: 5, max: 31 }).map((date) => `2026-10-${String(date).padStart(2, '0')}`);
/** Mostly today: an earlier day is refused once a packet was moved. */
const on = fc.oneof({ weight: 3, arbitrary: fc.constant(TODAY) }, { weight: 1, arbitrary: day });
const container = fc.constantFrom('foil-pouch', 'glass-jar', 'paper-envelope');
const amount = fc.integer({ min: 1, max: 300 });
const splitting = fc.record({ kind: fc.constant('split' as const), which, amount, store: which, container, on });
const act = fc.oneof(
  // Without several packets there is nothing to merge.
  { weight: 3, arbitrary: splitting },
  {
    weight: 2,
    arbitrary: fc.record({ kind: fc.constant('merge' as const), which, other: which, on, anyway: fc.boolean() }),
  },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('move' as const), which, store: which, on }) },
  { weight: 1, arbitrary: fc.record({ kind: fc.constant('repack' as const), which, container, on }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('take' as const), which, amount, on }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('undo' as const), which }) },
);
type Act = typeof act extends fc.Arbitrary<infer Value> ? Value : never;

const packetsOf = (lotId: string) =>
  reader().packet.findMany({
    where: { lotId },
    orderBy: { number: 'asc' },
    include: { placements: { orderBy: { id: 'asc' } }, movements: { orderBy: { id: 'asc' } } },
  });
type Packets = Awaited<ReturnType<typeof packetsOf>>;

const pick = <Item>(items: readonly Item[], index: number) => items[index % items.length] as Item;

async function perform(asked: Act, packets: Packets): Promise<unknown> {
  const packetId = pick(packets, asked.which).id;
  switch (asked.kind) {
    case 'split': {
      const { amount, container, on: from } = asked;
      const storeId = pick(stores, asked.store);
      const part = { packetId, amount, unit: 'seeds', role: 'active', storeId, container, from };
      return splitPacket(VOLUNTEER, { ...part, sealed: container !== 'paper-envelope' });
    }
    case 'merge': {
      const tick = asked.anyway ? 'on' : undefined;
      const others = packets.filter(({ id }) => id !== packetId);
      const otherPacketId = others.length === 0 ? packetId : pick(others, asked.other).id;
      return mergePackets(VOLUNTEER, { packetId, otherPacketId, on: asked.on, keepAnyway: tick, loseDuplicate: tick });
    }
    case 'move':
      return movePacket(VOLUNTEER, { packetId, storeId: pick(stores, asked.store), from: asked.on });
    case 'repack':
      return repackPacket(VOLUNTEER, { packetId, container: asked.container, moisturePercent: '6', from: asked.on });
    case 'take':
      return takeSeedOut(VOLUNTEER, { packetId, amount: asked.amount, unit: 'seeds', reason: 'sowing', on: asked.on });
    case 'undo': {
      const lines = packets.flatMap(({ movements }) => movements);
      return undoMovement(VOLUNTEER, { movementId: pick(lines, asked.which).id });
    }
  }
}

const total = (packets: Packets) =>
  packets.flatMap(({ movements }) => movements).reduce((sum, { seeds }) => sum + seeds, 0);

/** What an act does to the seed of the whole lot: only what goes in or out changes it. */
function expectedTotal(asked: Act, before: Packets): number {
  const lines = before.flatMap(({ movements }) => movements);
  if (asked.kind === 'take') return total(before) - asked.amount;
  if (asked.kind !== 'undo') return total(before);
  const taken = pick(lines, asked.which);
  return total(before) - (taken.pairId === null ? taken.seeds : 0);
}

function checkPacket({ number, movements, placements }: Packets[number]): void {
  let held = 0;
  for (const { seeds } of movements) {
    held += seeds;
    expect(held, `${number} after a line of its ledger`).toBeGreaterThanOrEqual(0);
  }
  // In the order in which they were written, which is the order of their days: nothing was slipped in before.
  const stays = storageHistory(placements, TODAY);
  expect(stays.length, number).toBeGreaterThan(0);
  for (const [index, stay] of stays.entries()) expect(stay.to, number).toBe(stays[index + 1]?.from ?? TODAY);
  const days = stays.reduce((sum, stay) => sum + stay.days, 0);
  expect(days, `${number}: its history has no gap`).toBe(toEpochDay(TODAY) - toEpochDay(stays[0]?.from as string));
}

function checkPairs(packets: Packets): void {
  const pairs = new Map<string, number[]>();
  for (const { pairId, seeds } of packets.flatMap(({ movements }) => movements)) {
    if (pairId) pairs.set(pairId, [...(pairs.get(pairId) ?? []), seeds]);
  }
  for (const [pairId, seeds] of pairs) {
    expect(seeds.length % 2, pairId).toBe(0);
    expect(
      seeds.reduce((sum, one) => sum + one, 0),
      pairId,
    ).toBe(0);
  }
}

/** Seed that was split off has been wherever the packet was that it came from. */
function checkSplit(asked: Act, before: Packets, after: Packets): void {
  if (asked.kind !== 'split') return;
  const source = pick(before, asked.which);
  const fresh = after.find(({ id }) => before.every((one) => one.id !== id));
  const stay = ({ storeId, from, container }: Packets[number]['placements'][number]) => [storeId, from, container];
  expect(fresh?.placements.slice(0, -1).map(stay)).toEqual(source.placements.map(stay));
}

it('any sequence of splits, merges, moves, repackings, takings and takings back keeps seed and histories whole', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: ACTS_EACH, maxLength: ACTS_EACH }), async (acts) => {
      const { lotId } = await makeLot({ accession, storeId: stores[0], seedCount: SEEDS });
      for (const asked of acts) {
        const before = await packetsOf(lotId);
        const refused = await perform(asked, before).then(
          () => null,
          (error: unknown) => error,
        );
        const after = await packetsOf(lotId);
        if (refused !== null) {
          expect(refused).toBeInstanceOf(AppError);
          expect(after).toEqual(before);
          continue;
        }
        done.set(asked.kind, (done.get(asked.kind) ?? 0) + 1);
        expect(total(after), asked.kind).toBe(expectedTotal(asked, before));
        for (const packet of after) checkPacket(packet);
        checkPairs(after);
        checkSplit(asked, before, after);
      }
    }),
    { seed: SEED, numRuns: SEQUENCES },
  );
  for (const kind of ['split', 'merge', 'move', 'repack', 'take', 'undo']) {
    expect(done.get(kind) ?? 0, kind).toBeGreaterThan(4);
  }
}, 120_000);
