import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type StorePhase, storeTimeline } from '@/lib/domain/stock/store-phases';

const FREEZER = { temperatureC: -18, relativeHumidity: null };
const FRIDGE = { temperatureC: 4, relativeHumidity: 0.3 };

function phasesOf(...phases: StorePhase[]) {
  return (storeId: string) => phases.filter((phase) => phase.storeId === storeId);
}
const always = (storeId: string, parentId: string | null, target: StorePhase['target']): StorePhase => ({
  storeId,
  fromDay: -Infinity,
  parentId,
  target,
});
const notLogged = () => null;
const loggedAlways = { fromDay: -9000, toDay: 9000 };
const onlyLogged = (logged: string) => (id: string) => (id === logged ? loggedAlways : null);

describe('storeTimeline', () => {
  it('gives a store that never changed one climate for all time', () => {
    const timeline = storeTimeline('freezer', phasesOf(always('freezer', null, FREEZER)), notLogged);
    expect(timeline).toEqual({
      ok: true,
      stretches: [
        { fromDay: -Infinity, toDay: Infinity, loggedStoreId: null, targetStoreId: 'freezer', target: FREEZER },
      ],
    });
  });

  it('takes a moved box from the fridge’s climate to the freezer’s on the day of the move', () => {
    const phases = phasesOf(
      always('fridge', null, FRIDGE),
      always('freezer', null, FREEZER),
      always('box', 'fridge', null),
      { storeId: 'box', fromDay: 100, parentId: 'freezer', target: null },
    );
    expect(storeTimeline('box', phases, onlyLogged('freezer'))).toEqual({
      ok: true,
      stretches: [
        { fromDay: -Infinity, toDay: 100, loggedStoreId: null, targetStoreId: 'fridge', target: FRIDGE },
        { fromDay: 100, toDay: Infinity, loggedStoreId: 'freezer', targetStoreId: 'freezer', target: FREEZER },
      ],
    });
  });

  it('keeps a target of its own over readings of the store around it', () => {
    const own = { temperatureC: 2, relativeHumidity: null };
    const timeline = storeTimeline(
      'drawer',
      phasesOf(always('fridge', null, FRIDGE), always('drawer', 'fridge', own)),
      onlyLogged('fridge'),
    );
    expect(timeline.ok && timeline.stretches).toMatchObject([
      { loggedStoreId: 'fridge', targetStoreId: 'drawer', target: own },
    ]);
  });

  it('follows a move of the shelf that a box stands on', () => {
    const phases = phasesOf(
      always('fridge', null, FRIDGE),
      always('freezer', null, FREEZER),
      always('shelf', 'fridge', null),
      always('box', 'shelf', null),
      { storeId: 'shelf', fromDay: 50, parentId: 'freezer', target: null },
    );
    const timeline = storeTimeline('box', phases, notLogged);
    expect(timeline.ok && timeline.stretches.map(({ fromDay, target }) => [fromDay, target.temperatureC])).toEqual([
      [-Infinity, 4],
      [50, -18],
    ]);
  });

  it('lets the later of two phases from the same day hold', () => {
    const phases = phasesOf(always('fridge', null, FREEZER), always('fridge', null, FRIDGE));
    const timeline = storeTimeline('fridge', phases, notLogged);
    expect(timeline.ok && timeline.stretches.map(({ target }) => target)).toEqual([FRIDGE]);
  });

  it('falls back on the logger around it before its own began and once its own has fallen silent', () => {
    const phases = phasesOf(always('fridge', null, FRIDGE), always('shelf', 'fridge', null));
    const loggers = (shelf: { fromDay: number; toDay: number }) => {
      const timeline = storeTimeline('shelf', phases, (id) => (id === 'shelf' ? shelf : { fromDay: 0, toDay: 1000 }));
      return timeline.ok && timeline.stretches.map(({ fromDay, loggedStoreId }) => [fromDay, loggedStoreId]);
    };
    expect(loggers({ fromDay: 100, toDay: 121 })).toEqual([
      [-Infinity, 'fridge'],
      [100, 'shelf'],
      [121, 'fridge'],
    ]);
    expect(loggers({ fromDay: 100, toDay: 940 }), 'a file that is not in yet').toEqual([
      [-Infinity, 'fridge'],
      [100, 'shelf'],
    ]);
    expect(loggers({ fromDay: 100, toDay: 939 }), 'silent for 61 days').toHaveLength(3);
  });

  it('says so when a store would lie inside itself on some day, though it does not today', () => {
    const phases = phasesOf(
      always('a', null, FREEZER),
      { storeId: 'a', fromDay: 10, parentId: 'b', target: null },
      { storeId: 'a', fromDay: 30, parentId: null, target: FREEZER },
      always('b', null, FREEZER),
      { storeId: 'b', fromDay: 20, parentId: 'a', target: null },
    );
    expect(storeTimeline('a', phases, notLogged)).toEqual({ ok: false, reason: 'inside-itself' });
    expect(storeTimeline('b', phases, notLogged)).toEqual({ ok: false, reason: 'inside-itself' });
  });

  it('is fine with two stores that lay in each other at different times', () => {
    const phases = phasesOf(
      always('a', null, FREEZER),
      { storeId: 'a', fromDay: 10, parentId: 'b', target: null },
      { storeId: 'a', fromDay: 20, parentId: null, target: FRIDGE },
      always('b', null, FREEZER),
      { storeId: 'b', fromDay: 20, parentId: 'a', target: null },
    );
    expect(storeTimeline('b', phases, notLogged).ok).toBe(true);
  });

  it('says so when an outermost store has no target', () => {
    expect(storeTimeline('a', phasesOf(always('a', null, null)), notLogged)).toEqual({
      ok: false,
      reason: 'no-target',
    });
  });

  it('refuses a store without phases', () => {
    expect(() => storeTimeline('a', () => [], notLogged)).toThrow(RangeError);
  });

  it('covers all time without overlap, whatever was moved', () => {
    const move = fc.record({ fromDay: fc.integer({ min: 0, max: 400 }), to: fc.constantFrom('fridge', 'freezer') });
    fc.assert(
      fc.property(fc.array(move, { maxLength: 8 }), fc.array(move, { maxLength: 8 }), (shelfMoves, boxMoves) => {
        const phases = phasesOf(
          always('fridge', null, FRIDGE),
          always('freezer', null, FREEZER),
          always('shelf', 'fridge', null),
          ...shelfMoves.map(({ fromDay, to }) => ({ storeId: 'shelf', fromDay, parentId: to, target: null })),
          always('box', 'shelf', null),
          ...boxMoves.map(({ fromDay, to }, index) => ({
            storeId: 'box',
            fromDay,
            parentId: index % 2 ? 'shelf' : to,
            target: null,
          })),
        );
        const timeline = storeTimeline('box', phases, notLogged);
        if (!timeline.ok) throw new Error(timeline.reason);
        const { stretches } = timeline;
        expect(stretches[0]?.fromDay).toBe(-Infinity);
        expect(stretches.at(-1)?.toDay).toBe(Infinity);
        stretches.slice(1).forEach((stretch, index) => {
          expect(stretch.fromDay).toBe(stretches[index]?.toDay);
          expect(stretch.target).not.toEqual(stretches[index]?.target);
        });
      }),
      { seed: 4, numRuns: 200 },
    );
  });
});
