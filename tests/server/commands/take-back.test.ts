import { beforeEach, describe, expect, test } from 'vitest';
import { recordGerminationTest } from '@/lib/server/commands/record-germination-test';
import { takeSeedOut } from '@/lib/server/commands/take-seed-out';
import { undoMovement } from '@/lib/server/commands/undo-movement';
import { connections } from '@/lib/server/database/connections';
import { newId } from '@/lib/server/new-id';
import { makeLot } from '@/tests/support/create-lot';
import { createLotWithPacket, germinationTestOf, recordTest } from '@/tests/support/create-tested-lot';
import { heldIn, ledgerOf, writeLines } from '@/tests/support/ledger';
import { VOLUNTEER } from '@/tests/support/people';
import { fieldMessage, refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank({ fresh: 'each' });

const undo = (movementId: string | undefined) => undoMovement(VOLUNTEER, { movementId });
const takeForTest = async (packetId: string, amount = '100', on = '2026-03-01', unit = 'seeds') => {
  await takeSeedOut(VOLUNTEER, { packetId, amount, unit, reason: 'test', on });
  return ledgerOf(packetId).at(-1)?.id as string;
};

describe('seed taken out for a test', () => {
  let packetId: string;
  beforeEach(async () => {
    packetId = (await createLotWithPacket({ seeds: 1000 })).packetId;
  });

  test('is named by the test, which takes none out again, whatever else the form says', async () => {
    const withdrawalId = await takeForTest(packetId);
    const { number } = await recordTest({ withdrawalId, packetId: '', takeSeed: 'on' });
    expect(heldIn(packetId)).toBe(900);
    const test = await connections().reader.germinationTest.findUnique({ where: { number } });
    expect(test).toMatchObject({ withdrawalId, packetId });
  });

  test('may be taken back while no test names it, and not afterwards', async () => {
    const withdrawalId = await takeForTest(packetId);
    await undo(withdrawalId);
    expect(heldIn(packetId)).toBe(1000);
    const second = await takeForTest(packetId);
    await recordTest({ withdrawalId: second });
    expect((await refusal(undo(second))).userMessage).toContain('went into T-0001');
    expect(heldIn(packetId)).toBe(900);
  });

  test('is refused when it was put back, used already, or is no seed for a test of this lot', async () => {
    const putBack = await takeForTest(packetId);
    await undo(putBack);
    expect(await fieldMessage(recordTest({ withdrawalId: putBack }), 'withdrawalId')).toContain('put back');
    const used = await takeForTest(packetId);
    await recordTest({ withdrawalId: used });
    const again = recordTest({ withdrawalId: used, finishedOn: '2026-03-17' });
    expect(await fieldMessage(again, 'withdrawalId')).toContain('T-0001 already');
    await takeSeedOut(VOLUNTEER, { packetId, amount: '100', unit: 'seeds', reason: 'sowing', on: '2026-03-01' });
    const sown = ledgerOf(packetId).at(-1)?.id;
    const other = recordTest({ withdrawalId: sown, finishedOn: '2026-03-18' });
    expect(await fieldMessage(other, 'withdrawalId')).toContain('not taken out for a test');
    const elsewhere = await createLotWithPacket({ number: 'L-2020-002' });
    const foreign = recordTest({ withdrawalId: await takeForTest(elsewhere.packetId), finishedOn: '2026-03-19' });
    expect(await fieldMessage(foreign, 'withdrawalId')).toContain('out of lot L-2020-001');
  });

  test('must be enough for the replicates, and must have been out when they were set', async () => {
    const tooLittle = await takeForTest(packetId, '99');
    expect(await fieldMessage(recordTest({ withdrawalId: tooLittle }), 'withdrawalId')).toContain('Only 99 seeds');
    const tooLate = await takeForTest(packetId, '100', '2026-03-03');
    expect(await fieldMessage(recordTest({ withdrawalId: tooLate }), 'setOn')).toContain('2026-03-03');
  });

  test('may hold a few seeds more than the ledger says when it was weighed', async () => {
    const weighed = await makeLot({
      seedCount: '',
      cleanWeightG: '10.4',
      thousandSeedWeightG: '2.6',
      harvestedOn: '2025-09-01',
      storedOn: '2025-10-01',
    });
    // 93 seeds, give or take 4.0
    const withdrawalId = await takeForTest(weighed.packetId, '0.2418', '2026-03-01', 'grams');
    await recordGerminationTest(VOLUNTEER, germinationTestOf({ lot: weighed.number, withdrawalId }));
    expect(ledgerOf(weighed.packetId).at(-1)).toMatchObject({ seeds: -93 });
  });

  test('goes to one of two tests that are sent at the same moment', async () => {
    const withdrawalId = await takeForTest(packetId);
    const outcomes = await Promise.allSettled([
      recordTest({ withdrawalId }),
      recordTest({ withdrawalId, finishedOn: '2026-03-17' }),
    ]);
    expect(outcomes.map(({ status }) => status).sort()).toEqual(['fulfilled', 'rejected']);
  });

  test('by an older record, before tests named their lines, cannot be taken back', async () => {
    writeLines({ id: newId(), packetId, reason: 'test', seeds: -50, note: 'Germination test T-0009' });
    expect((await refusal(undo(ledgerOf(packetId).at(-1)?.id))).userMessage).toContain('correct the test');
  });
});

describe('the two lines of a split or merge', () => {
  async function pair(reason: 'split' | 'merge') {
    const one = await createLotWithPacket({ seeds: 1000 });
    const two = await createLotWithPacket({ number: 'L-2020-002', seeds: 10 });
    const pairId = newId();
    writeLines(
      { id: newId(), packetId: one.packetId, reason, seeds: -300, pairId },
      { id: newId(), packetId: two.packetId, reason, seeds: 300, pairId },
    );
    return { one: one.packetId, two: two.packetId };
  }

  test.each(['split', 'merge'] as const)('of a %s are taken back together, from either side', async (reason) => {
    const { one, two } = await pair(reason);
    await undo(ledgerOf(two).at(-1)?.id);
    expect([heldIn(one), heldIn(two)]).toEqual([1000, 10]);
    for (const packetId of [one, two]) {
      const [, line, counter] = ledgerOf(packetId);
      expect(counter).toMatchObject({ reason: 'correction', correctsId: line?.id });
    }
    expect((await refusal(undo(ledgerOf(one)[1]?.id))).code).toBe('conflict');
  });

  test('stay both when the other packet no longer holds the seeds, and the sentence names it', async () => {
    const { one, two } = await pair('split');
    await takeSeedOut(VOLUNTEER, { packetId: two, amount: '50', unit: 'seeds', reason: 'sowing' });
    const refused = await refusal(undo(ledgerOf(one)[1]?.id));
    expect(refused.userMessage).toBe(
      'Only 260 of these 300 seeds are still in packet P-00002. Take back what was taken out since, first.',
    );
    expect([heldIn(one), heldIn(two)]).toEqual([700, 260]);
  });

  test('from before they shared a mark are not taken back alone', async () => {
    const { packetId } = await createLotWithPacket();
    writeLines({ id: newId(), packetId, reason: 'split', seeds: -300 });
    expect((await refusal(undo(ledgerOf(packetId).at(-1)?.id))).userMessage).toContain('Merge the two packets');
    expect(heldIn(packetId)).toBe(700);
  });
});

describe('a count', () => {
  test('stands before what was written earlier: that is no longer taken back, unless the count is', async () => {
    const { packetId } = await createLotWithPacket({ seeds: 1000 });
    await takeSeedOut(VOLUNTEER, { packetId, amount: '100', unit: 'seeds', reason: 'sowing' });
    writeLines({ id: newId(), packetId, reason: 'count', seeds: -7 });
    await takeSeedOut(VOLUNTEER, { packetId, amount: '20', unit: 'seeds', reason: 'sowing' });
    const [, before, count, since] = ledgerOf(packetId);
    expect((await refusal(undo(before?.id))).userMessage).toContain('counted on 2026-11-20');
    await undo(since?.id);
    await undo(count?.id);
    await undo(before?.id);
    expect(heldIn(packetId)).toBe(1000);
  });
});
