import { expect, test } from 'vitest';
import { stopHint } from '@/app/(bank)/stores/drying/_parts/stop-hint';
import { dryingProgress, type Weighing } from '@/lib/domain/moisture/drying-progress';

const START = { startMoisturePercent: 12, targetMoisturePercent: 7, stepG: 0.1 };
/** 460 g of dry matter from 12 %, levelling off at a moisture, weighed from 9 in the morning of day 0. */
function weighed(settles: number, hours: number[], rate = 0.03): Weighing[] {
  const [start, end] = [460 / 0.88, 460 / (1 - settles / 100)];
  return hours.map((at) => ({
    hours: 9 + at,
    weightG: Number((end + (start - end) * Math.exp(-rate * at)).toFixed(1)),
  }));
}
const hintOf = (weighings: Weighing[], nowHours: number, dryingWith: string | null = 'silica gel') =>
  stopHint({
    progress: dryingProgress({ ...START, weighings }),
    targetMoisturePercent: 7,
    hourZero: '2026-11-18',
    nowHours,
    dryingWith,
  });

test('at the target it says stop, and since when', () => {
  const done = weighed(5, [0, 24, 48]);
  expect(hintOf(done, 9 + 50)).toMatchObject({ kind: 'stop', short: 'Stop: 6.8 %' });
  expect(hintOf(done, 9 + 50).text).toContain('**Stop: at target since this morning.**');
  expect(hintOf(done, 9 + 72).text).toContain('at target since yesterday');
  expect(hintOf(done, 9 + 240).text).toContain('at target since 20 Nov 2026');
  expect(hintOf(weighed(5, [0, 24, 52]), 9 + 53).text).toContain('since this afternoon');
  expect(hintOf(weighed(5, [0, 24, 58]), 9 + 59).text).toContain('since this evening');
});

test('on the way it says how long from now, not from the last weighing', () => {
  const underWay = weighed(5, [0, 6, 12, 18]);
  const hint = hintOf(underWay, 9 + 20);
  // levels off at 5 %: 7 % is reached after ln(38.517 / 10.413) / 0.03 = 43.6 hours
  expect(hint).toMatchObject({ kind: 'wait', short: '24 hours to go' });
  expect(hint.text).toMatch(/^\*\*About 24 hours to go\*\*: at 7.0 % on 20 Nov 2026, about 0[45]:00. Likely between/);
  expect(hintOf(underWay, 9 + 60)).toMatchObject({ kind: 'look', short: 'Weigh it: should be dry' });
});

test('seed that settles above the target is stuck, and the words fit what it dries with', () => {
  const settled = weighed(7.8, [0, 24, 48, 96, 150, 200], 0.05);
  expect(hintOf(settled, 230)).toMatchObject({ kind: 'stuck', short: 'Settled at 7.8 %' });
  expect(hintOf(settled, 230).text).toContain(
    '**It settles at 7.8 %: silica gel cannot dry it to 7.0 %.** Regenerate the gel',
  );
  expect(hintOf(settled, 230, 'zeolite beads').text).toContain('Renew the desiccant');
  expect(hintOf(settled, 230, null).text).toContain('this air cannot dry it to 7.0 %.** Dry in drier air');
});

test('where nothing can be said it says what to do instead', () => {
  expect(hintOf(weighed(5, [0]), 10)).toMatchObject({ kind: 'look', short: 'Weigh it again' });
  const still = [0, 5, 10].map((hours) => ({ hours, weightG: 520 }));
  expect(hintOf(still, 11)).toMatchObject({ kind: 'stuck', short: 'No change' });
  const wetter = [0, 5, 10].map((hours) => ({ hours, weightG: 520 + hours }));
  expect(hintOf(wetter, 11)).toMatchObject({ kind: 'stuck', short: 'Takes up water' });
  const straight = [0, 5, 10].map((hours) => ({ hours, weightG: 522 - hours }));
  expect(hintOf(straight, 11)).toMatchObject({ kind: 'wait', short: 'Still falling' });
});

test('less than the dry matter is a slip or a spill, and named by its time', () => {
  const spilled = [...weighed(5, [0, 6]), { hours: 30, weightG: 400 }];
  expect(hintOf(spilled, 31)).toMatchObject({ kind: 'stuck', short: 'Check the weights' });
  expect(hintOf(spilled, 31).text).toContain('19 Nov 2026, about 06:00');
});
