import { describe, expect, test } from 'vitest';
import { closeTray } from '@/lib/server/commands/close-tray';
import { reader } from '@/lib/server/database/connections';
import { type Belief, whatWasLearnt } from '@/lib/server/queries/what-was-learnt';
import { makeLot } from '../../support/create-lot';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { createTray } from '../../support/create-tray';
import { VOLUNTEER } from '../../support/people';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const COUNTED = [
  { on: '2026-11-24', dish: 1, found: { normal: 38, hard: 1, dead: 11 } },
  { on: '2026-11-24', dish: 2, found: { normal: 36, fresh: 2, dead: 12 } },
];
const judgementOf = (lotId: string) => reader().lotJudgement.findUniqueOrThrow({ where: { lotId } });
/** A belief in the columns of a judgement. */
const asJudged = ({ viability, threshold, chanceBelow, nextTestOn, lastSafeSeason }: Belief) => ({
  viabilityMedian: viability.median,
  viabilityLower: viability.lower,
  viabilityUpper: viability.upper,
  threshold,
  chanceBelow,
  testDueOn: nextTestOn,
  lastSafeSeason: typeof lastSafeSeason === 'number' ? lastSafeSeason : null,
});
const learnt = async (number: string) => {
  const found = await whatWasLearnt(number);
  if (!found?.ok) throw new Error('a forecast was expected');
  return found;
};

describe('what a test has told', () => {
  test.each([
    ['of a lot never tested', []],
    [
      'of a lot tested before',
      [
        { setOn: '2021-03-02', finishedOn: '2021-03-16', replicates: [{ seeds: 100, normal: 93 }] },
        { setOn: '2024-03-02', finishedOn: '2024-03-16', replicates: [{ seeds: 100, normal: 88 }] },
      ],
    ],
  ])('%s: before and now are what was judged before and after it was closed, figure for figure', async (_, earlier) => {
    await createLotWithPacket();
    for (const one of earlier) await recordTest(one);
    const tray = await createTray({ lotNumber: 'L-2020-001', counts: COUNTED, takesSeed: false });
    const before = await judgementOf(tray.lotId);
    const { number } = await closeTray(VOLUNTEER, { trayId: tray.id });
    const now = await judgementOf(tray.lotId);
    const told = await learnt(number);
    expect(before).toMatchObject(asJudged(told.before));
    expect(now).toMatchObject(asJudged(told.now));
    expect(told.now.viability).not.toEqual(told.before.viability);
    expect(told.isNewest).toBe(true);
    expect(told.tests.filter(({ isThis }) => isThis)).toMatchObject([{ number, alive: 77, sown: 100 }]);
    expect(told.tests).toHaveLength(earlier.length + 1);
  });

  test('both curves run over the same days, and today each passes through what is judged', async () => {
    const tray = await createTray({ counts: COUNTED });
    const told = await learnt((await closeTray(VOLUNTEER, { trayId: tray.id })).number);
    expect(told.before.curve.map(({ day }) => day)).toEqual(told.now.curve.map(({ day }) => day));
    for (const belief of [told.before, told.now]) {
      const today = belief.curve.find(({ day }) => day === told.todayDay);
      expect(today?.median).toBeCloseTo(belief.viability.median, 9);
      expect(belief.table.some(({ day }) => day === told.todayDay)).toBe(true);
    }
  });

  test('an earlier test is compared with all others, the later ones included', async () => {
    await createLotWithPacket();
    const first = await recordTest({ setOn: '2024-03-02', finishedOn: '2024-03-16' });
    await recordTest({ setOn: '2026-03-02', finishedOn: '2026-03-16' });
    const told = await learnt(first.number);
    expect(told.isNewest).toBe(false);
    expect(told.tests).toHaveLength(2);
  });

  test('a corrected test tells nothing; its correction is compared with no test of its own', async () => {
    const { lotId } = await createLotWithPacket();
    const untested = await judgementOf(lotId);
    const first = await recordTest();
    const second = await recordTest({
      ...{ correctsId: first.id, correctionReason: 'swapped' },
      replicates: [{ seeds: 100, normal: 60 }],
    });
    expect(await whatWasLearnt(first.number)).toBeNull();
    expect(untested).toMatchObject(asJudged((await learnt(second.number)).before));
    expect(await whatWasLearnt('T-9999')).toBeNull();
  });

  test('where no forecast holds it says why', async () => {
    const lot = await makeLot({ moisturePercent: '24', storeAnyway: 'on' });
    const { number } = await recordTest({ lot: lot.number, setOn: '2026-11-01', finishedOn: '2026-11-15' });
    expect(await whatWasLearnt(number)).toEqual({ ok: false, reason: expect.stringMatching(/moist/) });
  });
});
