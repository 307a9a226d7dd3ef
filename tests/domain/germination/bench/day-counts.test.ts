import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { NOTHING_FOUND, sayTheSame, seedsFound, type TrayCount } from '@/lib/domain/germination/bench/tray-count';

const normal = (count: number) => ({ ...NOTHING_FOUND, normal: count });
const count = (id: string, found: TrayCount['found'], more: Partial<TrayCount> = {}): TrayCount => ({
  id,
  dishId: 'dish-1',
  on: '2026-11-30',
  found,
  replaces: [],
  ...more,
});

describe('what holds for a dish and a day', () => {
  it('is the one count there is', () => {
    expect(dayCounts([count('a', normal(7))])).toEqual([
      { dishId: 'dish-1', on: '2026-11-30', found: normal(7), standing: [count('a', normal(7))], disagree: false },
    ]);
  });

  it('is the count that replaced the others', () => {
    const [day] = dayCounts([count('a', normal(7)), count('b', normal(8), { replaces: ['a'] })]);
    expect(day).toMatchObject({ found: normal(8), disagree: false });
    expect(day?.standing).toHaveLength(1);
  });

  it('two phones that did not see each other and wrote the same are one finding', () => {
    const [day] = dayCounts([count('a', normal(7)), count('b', normal(7))]);
    expect(day).toMatchObject({ found: normal(7), disagree: false });
    expect(day?.standing).toHaveLength(2);
  });

  it('two phones that wrote different things disagree, and both stand', () => {
    const [day] = dayCounts([count('a', normal(7)), count('b', normal(5))]);
    expect(day).toMatchObject({ found: normal(5), disagree: true });
    expect(day?.standing.map(({ id }) => id)).toEqual(['a', 'b']);
  });

  it('a third phone that agrees with the last one does not settle it', () => {
    const [day] = dayCounts([count('a', normal(7)), count('b', normal(5)), count('c', normal(5))]);
    expect(day).toMatchObject({ found: normal(5), disagree: true });
  });

  it('a later count that names both settles it', () => {
    const counts = [count('a', normal(7)), count('b', normal(5)), count('c', normal(12), { replaces: ['a', 'b'] })];
    expect(dayCounts(counts)[0]).toMatchObject({ found: normal(12), disagree: false });
  });

  it('taking a count back leaves nothing found, and disagrees with a change made elsewhere', () => {
    const first = count('a', normal(7));
    const back = count('b', null, { replaces: ['a'] });
    expect(dayCounts([first, back])[0]).toMatchObject({ found: null, disagree: false });
    const changed = count('c', normal(6), { replaces: ['a'] });
    expect(dayCounts([first, back, changed])[0]).toMatchObject({ disagree: true });
  });

  it('other days and dishes are their own', () => {
    const counts = [
      count('a', normal(7)),
      count('b', normal(2), { on: '2026-12-01', replaces: ['a'] }),
      count('c', normal(3), { dishId: 'dish-2', replaces: ['a'] }),
    ];
    expect(dayCounts(counts).map(({ dishId, on, found }) => [dishId, on, found?.normal])).toEqual([
      ['dish-1', '2026-11-30', 7],
      ['dish-1', '2026-12-01', 2],
      ['dish-2', '2026-11-30', 3],
    ]);
  });

  it('counts that name each other in a ring do not all vanish', () => {
    const ring = [
      count('a', normal(1), { replaces: ['c'] }),
      count('b', normal(2), { replaces: ['a'] }),
      count('c', normal(3), { replaces: ['b'] }),
    ];
    expect(dayCounts(ring)[0]?.standing.map(({ id }) => id)).toEqual(['c']);
  });
});

describe('laws', () => {
  const classes = fc.record({
    normal: fc.integer({ min: 0, max: 3 }),
    abnormal: fc.integer({ min: 0, max: 1 }),
    hard: fc.constant(0),
    fresh: fc.constant(0),
    dead: fc.integer({ min: 0, max: 1 }),
  });
  /** Counts as several phones make them: each names some of those made before. */
  const history = fc
    .array(
      fc.record({
        found: fc.option(classes),
        dish: fc.constantFrom('dish-1', 'dish-2'),
        on: fc.constantFrom('2026-11-30', '2026-12-01'),
        sees: fc.array(fc.nat(11), { maxLength: 4 }),
      }),
      { maxLength: 12 },
    )
    .map((steps) =>
      steps.map(({ found, dish, on, sees }, index) =>
        count(`id-${String(index).padStart(2, '0')}`, found, {
          dishId: dish,
          on,
          replaces: sees.map((seen) => `id-${String(seen).padStart(2, '0')}`),
        }),
      ),
    );

  it('the order of arrival does not matter, nor that a count arrives twice', () => {
    fc.assert(
      fc.property(
        history.chain((counts) =>
          fc.tuple(
            fc.constant(counts),
            fc.shuffledSubarray([...counts, ...counts], { minLength: counts.length * 2, maxLength: counts.length * 2 }),
          ),
        ),
        ([counts, shuffled]) => {
          expect(dayCounts(shuffled)).toEqual(dayCounts(counts));
        },
      ),
    );
  });

  it('what was written last is never lost: the highest id of a dish and day always stands', () => {
    fc.assert(
      fc.property(history, (counts) => {
        const days = dayCounts(counts);
        for (const { dishId, on } of counts) {
          const last = counts.filter((one) => one.dishId === dishId && one.on === on).at(-1);
          const day = days.find((one) => one.dishId === dishId && one.on === on);
          expect(day?.standing.map(({ id }) => id)).toContain(last?.id);
        }
      }),
    );
  });

  it('a count is only gone when another names it', () => {
    fc.assert(
      fc.property(history, (counts) => {
        const standing = new Set(dayCounts(counts).flatMap((day) => day.standing.map(({ id }) => id)));
        for (const one of counts) {
          const named = counts.some((other) => other.id > one.id && other.replaces.includes(one.id));
          if (!named) expect(standing.has(one.id)).toBe(true);
        }
      }),
    );
  });

  it('a count that names all that stand settles every dish and day', () => {
    fc.assert(
      fc.property(history, (counts) => {
        const settled = dayCounts(counts).map((day, index) =>
          count(`z-${index}`, normal(1), {
            dishId: day.dishId,
            on: day.on,
            replaces: day.standing.map(({ id }) => id),
          }),
        );
        for (const day of dayCounts([...counts, ...settled])) {
          expect(day).toMatchObject({ disagree: false, found: normal(1) });
        }
      }),
    );
  });
});

it('adds the seeds of all classes', () => {
  expect(seedsFound({ normal: 3, abnormal: 1, hard: 2, fresh: 4, dead: 5 })).toBe(15);
});

it('two counts say the same only when every class does', () => {
  expect(sayTheSame(normal(3), normal(3))).toBe(true);
  expect(sayTheSame(normal(3), { ...normal(3), dead: 1 })).toBe(false);
  expect(sayTheSame(null, null)).toBe(true);
  expect(sayTheSame(null, NOTHING_FOUND)).toBe(false);
});
