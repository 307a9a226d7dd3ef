import { expect, test } from 'vitest';
import { type SeriesGroup, seriesSoFar } from '@/lib/domain/germination/plan/series';

const PLAN = {
  looks: [
    { seedsTested: 40, regrowAtMost: 31, keepAtLeast: 37 },
    { seedsTested: 80, regrowAtMost: 66, keepAtLeast: 72 },
    { seedsTested: 120, regrowAtMost: 102, keepAtLeast: 103 },
  ],
};
const closed = (alive: number, seeds = 40): SeriesGroup => ({ status: 'closed', result: { seeds, alive } });
const OPEN: SeriesGroup = { status: 'open', result: null };
const GIVEN_UP: SeriesGroup = { status: 'given-up', result: null };

test('a first group that is clear ends the test', () => {
  expect(seriesSoFar(PLAN, [closed(37)])).toMatchObject({ decision: { decision: 'keep' }, nextSeeds: null });
  expect(seriesSoFar(PLAN, [closed(31)])).toMatchObject({ decision: { decision: 'regrow' }, nextSeeds: null });
});

test('one that is not clear asks for the next, and then all groups are counted together', () => {
  expect(seriesSoFar(PLAN, [closed(34)])).toMatchObject({ seedsTested: 40, alive: 34, nextSeeds: 40 });
  expect(seriesSoFar(PLAN, [closed(34), closed(38)])).toMatchObject({
    seedsTested: 80,
    alive: 72,
    decision: { decision: 'keep' },
    nextSeeds: null,
  });
});

test('nothing more is set while a group is counted, and a group that was given up tells nothing', () => {
  expect(seriesSoFar(PLAN, [OPEN])).toMatchObject({ waiting: true, nextSeeds: null, seedsTested: 0 });
  expect(seriesSoFar(PLAN, [closed(34), OPEN])).toMatchObject({ waiting: true, nextSeeds: null, seedsTested: 40 });
  expect(seriesSoFar(PLAN, [closed(34), GIVEN_UP])).toMatchObject({ waiting: false, nextSeeds: 40 });
  expect(seriesSoFar(PLAN, [GIVEN_UP])).toMatchObject({ nextSeeds: 40, seedsTested: 0 });
});

test('a look that was clear stays the answer, whatever was counted after it', () => {
  expect(seriesSoFar(PLAN, [closed(37), closed(20)])).toMatchObject({ decision: { decision: 'keep' }, alive: 57 });
});

test('seed lost on the way is made up by the next group', () => {
  expect(seriesSoFar(PLAN, [closed(33, 38)])).toMatchObject({ seedsTested: 38, nextSeeds: 2 });
});
