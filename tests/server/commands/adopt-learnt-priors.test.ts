import { describe, expect, it } from 'vitest';
import { figuresInOneLine, figuresToAdopt } from '@/lib/domain/longevity/bank-learning/figures-to-adopt';
import { adoptLearntPriors } from '@/lib/server/commands/adopt-learnt-priors';
import { updateCrop } from '@/lib/server/commands/update-crop';
import { connections, reader } from '@/lib/server/database/connections';
import { isLearnt, learnCrop } from '@/lib/server/judging/learn-crop';
import { findAdoptedPriors } from '@/lib/server/queries/crop-learning';
import { lastAuditLine } from '../../support/audit';
import { cropIdOf } from '../../support/create-accession';
import { createLotWithPacket, recordTest } from '../../support/create-tested-lot';
import { STEWARD, VOLUNTEER } from '../../support/people';
import { refusal } from '../../support/refusal';
import { useTestBank } from '../../support/test-bank';

useTestBank({ fresh: 'each' });

const TODAY = '2026-11-25';
const leek = () => cropIdOf('Leek');
const learn = () => learnCrop(connections().rows, leek(), TODAY);

const dishes = (alive: number) =>
  [0, 1].map((dish) => ({
    seeds: '50',
    normal: String(Math.floor((alive + dish) / 2)),
    abnormal: '',
    hard: '',
    fresh: '',
    dead: '',
  }));

/** A lot that was 94 % alive when fresh and 60 % six years on: in a cool place, far faster than published. */
async function fallingLot(number: string, alive = [94, 60]) {
  await createLotWithPacket({ number, accessionName: `Skerry ${number}`, harvestedOn: '2018-09-15' });
  await recordTest({
    lot: number,
    setOn: '2018-10-01',
    finishedOn: '2018-10-15',
    replicates: dishes(alive[0] as number),
  });
  await recordTest({
    lot: number,
    setOn: '2025-10-01',
    finishedOn: '2025-10-15',
    replicates: dishes(alive[1] as number),
  });
}
const NUMBERS = ['L-2018-001', 'L-2018-002', 'L-2018-003', 'L-2018-004'];
async function fallingLots(count = NUMBERS.length) {
  for (const number of NUMBERS.slice(0, count)) await fallingLot(number);
}
function shownNow(): string {
  const learning = learn()?.learning;
  if (!learning?.ok) throw new Error('nothing learnt');
  return figuresInOneLine(figuresToAdopt(learning));
}
const version = () =>
  connections().bulk.prepare(`SELECT "version" FROM "Crop" WHERE "id" = ?`).pluck().get(leek()) as number;
const adopt = (overrides: Record<string, unknown> = {}, person = STEWARD) =>
  adoptLearntPriors(person, { id: leek(), version: version(), shown: shownNow(), ...overrides });

describe('learning a crop from its lots', () => {
  it('reckons from real lots, tests and stores, and keeps it until something is written', async () => {
    await fallingLots(3);
    const learnt = learn();
    expect(learnt?.learning).toMatchObject({ ok: true, lots: 3, tests: 6 });
    expect(learnt?.leftOut).toBe(0);
    expect(isLearnt(connections().rows, leek(), TODAY)).toBe(true);
    expect(learn()).toBe(learnt);
    await fallingLot('L-2018-009');
    expect(isLearnt(connections().rows, leek(), TODAY)).toBe(false);
    expect(learn()?.learning).toMatchObject({ lots: 4 });
  });

  it('says too few of two lots, and nothing of a crop without constants', async () => {
    await fallingLots(2);
    expect(learn()?.learning).toMatchObject({ ok: false, reason: 'too-few-lots', lots: 2 });
    connections().bulk.prepare(`UPDATE "Crop" SET "longevityConstantsId" = NULL WHERE "id" = ?`).run(leek());
    expect(learnCrop(connections().bulk, leek(), '2026-11-26')).toBeNull();
  });

  it('starts from the published belief even when the bank has figures of its own: tests count once', async () => {
    await fallingLots(4);
    const before = learn()?.learning;
    await adopt();
    expect(learn()?.learning).toEqual(before);
  });
});

describe('adoptLearntPriors', () => {
  it("sets the crop's own figures, judges its lots by them, and says how many lots they rest on", async () => {
    await fallingLots(4);
    const judged = () => reader().lotJudgement.findFirstOrThrow({ where: { lotNumber: 'L-2018-001' } });
    const before = await judged();
    const shown = shownNow();
    await adopt();
    const crop = await reader().crop.findUniqueOrThrow({ where: { id: leek() } });
    const own = [crop.priorInitialMean, crop.priorInitialSd, crop.priorLogRateMean, crop.priorLogRateSd];
    expect(own.filter((figure) => figure !== null).join(' ')).toBe(shown);
    expect(crop.version).toBe(2);
    expect(lastAuditLine()?.summary).toMatch(/^Took over for crop Leek what 4 lots and 8 tests say: prior initial/);
    const after = await judged();
    expect(after.viabilityMedian).not.toBe(before.viabilityMedian);
    expect(await findAdoptedPriors(leek())).toMatchObject({ lots: 4, tests: 8, figures: shown });
  });

  it('refuses figures that nobody has seen, and tells to look again', async () => {
    await fallingLots(3);
    const shown = shownNow();
    await fallingLot('L-2018-009', [99, 95]);
    const refused = await refusal(adopt({ shown }));
    expect(refused.code).toBe('conflict');
    expect(refused.userMessage).toContain('Load it again');
    expect(version()).toBe(1);
    expect((await refusal(adopt({ shown: '1; 2' }))).code).toBe('invalid-input');
  });

  it('refuses when too few lots tell, and a second time', async () => {
    await fallingLots(2);
    const early = await refusal(adoptLearntPriors(STEWARD, { id: leek(), version: 1, shown: '1.7 0.7' }));
    expect(early.code).toBe('refused');
    await fallingLot('L-2018-009');
    await adopt();
    expect((await refusal(adopt())).userMessage).toContain('figures already');
  });

  it('is undone by emptying the figures, after which no adopted ones are known', async () => {
    await fallingLots(3);
    await adopt();
    const { longevityConstantsId, borrowedBecause } = await reader().crop.findUniqueOrThrow({ where: { id: leek() } });
    await updateCrop(STEWARD, {
      id: leek(),
      version: 2,
      longevityConstantsId,
      constantsBorrowed: 'on',
      borrowedBecause,
    });
    expect(await reader().crop.findUniqueOrThrow({ where: { id: leek() } })).toMatchObject({
      priorInitialMean: null,
      priorLogRateSd: null,
    });
    expect(await findAdoptedPriors(leek())).toBeNull();
  });

  it('is for stewards', async () => {
    await fallingLots(3);
    expect((await refusal(adopt({}, VOLUNTEER))).code).toBe('not-allowed');
  });
});
