import { expect, test } from 'vitest';
import { comingLookInWords, seriesInWords } from '@/app/(bank)/germination/[number]/_parts/series-words';
import { seriesSoFar } from '@/lib/domain/germination/plan/series';

const PLAN = {
  line: 0.85,
  looks: [
    { seedsTested: 40, regrowAtMost: 29, keepAtLeast: 38 },
    { seedsTested: 80, regrowAtMost: 64, keepAtLeast: 65 },
  ],
};
type Group = { status: 'open' | 'closed'; result: { seeds: number; alive: number } | null };
const say = (...groups: Group[]) =>
  seriesInWords({
    plan: PLAN,
    soFar: seriesSoFar(PLAN, groups),
    groups: groups.map((group, index) => ({ ...group, groupNumber: index + 1 })) as never,
  });
const closed = (alive: number): Group => ({ status: 'closed', result: { seeds: 40, alive } });

test('says stop and keep, stop and regrow, or how many more to set, with the line of the plan', () => {
  expect(say(closed(39))).toBe('39 of 40 seeds were alive. **Stop: the lot is above the line of 85 %.** Keep it.');
  expect(say(closed(20))).toMatch(/\*\*Stop: the lot is below the line of 85 %.\*\* Regrow it/);
  expect(say(closed(33))).toBe('33 of 40 seeds were alive. That is not clear yet: **set 40 more seeds**.');
  expect(say(closed(33), closed(30))).toMatch(/Stop: the lot is below/);
});

test('says what the coming look decides, before it comes', () => {
  const look = (...groups: Group[]) => comingLookInWords({ plan: PLAN, soFar: seriesSoFar(PLAN, groups) });
  expect(look({ status: 'open', result: null })).toBe(
    'When 40 seeds are counted, 38 or more alive: stop, keep the lot; 29 or fewer alive: stop, regrow it; anything else: set 40 more.',
  );
  // The last look of this plan leaves nothing between its limits.
  expect(look(closed(33))).toBe(
    'When 80 seeds are counted, 65 or more alive: stop, keep the lot; 64 or fewer alive: stop, regrow it.',
  );
  expect(look(closed(39))).toBeNull();
  expect(look(closed(33), closed(33))).toBeNull();
  const wide = { looks: [{ seedsTested: 40, regrowAtMost: 29, keepAtLeast: null }] };
  expect(comingLookInWords({ plan: wide, soFar: seriesSoFar(wide, []) })).toBe(
    'When 40 seeds are counted, 29 or fewer alive: stop, regrow it; anything else: undecided.',
  );
});

test('waits while a group is being counted', () => {
  expect(say({ status: 'open', result: null })).toBe(
    'Group 1 is being counted; the plan looks again when it is closed.',
  );
  expect(say(closed(33), { status: 'open', result: null })).toMatch(
    /^33 of 40 seeds were alive. Group 2 is being counted/,
  );
});
