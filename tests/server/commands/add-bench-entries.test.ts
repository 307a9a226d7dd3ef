import { beforeAll, describe, expect, it } from 'vitest';
import { NOTHING_FOUND } from '@/lib/domain/germination/bench/tray-count';
import { isUuidV7, uuidV7 } from '@/lib/domain/ids/uuid-v7';
import { sentPhotoSchema } from '@/lib/schemas/bench-entries';
import { MOST_ENTRIES_SENT } from '@/lib/schemas/bench-wire';
import { addBenchEntries } from '@/lib/server/commands/add-bench-entries';
import { connections } from '@/lib/server/database/connections';
import { newId, newIdAfter } from '@/lib/server/new-id';
import { countRows, lastAuditLine } from '@/tests/support/audit';
import { createLotWithPacket } from '@/tests/support/create-tested-lot';
import { createTray } from '@/tests/support/create-tray';
import { STEWARD, VISITOR, VOLUNTEER } from '@/tests/support/people';
import { refusal } from '@/tests/support/refusal';
import { useTestBank } from '@/tests/support/test-bank';

useTestBank();
beforeAll(() => createLotWithPacket());

const DEVICE = 'phone-by-the-door';
const tray = (more = {}) => createTray({ lotNumber: 'L-2020-001', takesSeed: false, ...more });
type Tray = Awaited<ReturnType<typeof tray>>;

/** The highest id of the millisecond before a moment, and the lowest of that moment. */
function idsAround(moment: number): [string, string] {
  const highest = uuidV7({ now: moment - 1, after: null, random: new Uint8Array(8).fill(0xff) }).replace(
    /-7.../,
    '-7fff',
  );
  return [highest, uuidV7({ now: moment, after: null, random: new Uint8Array(8) })];
}

const photoOf = (of: Tray, id: string) => ({
  ...{ id, deviceId: DEVICE, trayId: of.id, dish: null, on: '2026-11-25', madeAt: '2026-11-25T08:00:00.000Z' },
});

const countOf = (of: Tray, overrides: Record<string, unknown> = {}) => ({
  kind: 'count',
  id: newId(),
  trayId: of.id,
  dishId: of.dishes[0]?.id,
  on: '2026-11-25',
  found: { ...NOTHING_FOUND, normal: 5 },
  places: null,
  replaces: [],
  madeAt: '2026-11-25T08:00:00.000Z',
  countedBy: null,
  ...overrides,
});
const send = async (entries: unknown[], person = VOLUNTEER) =>
  (await addBenchEntries(person, { deviceId: DEVICE, entries })).answers;
const sendOne = async (entry: unknown, person = VOLUNTEER) => (await send([entry], person))[0];
const rowsOf = ({ id }: Tray) =>
  connections()
    .rows.prepare<[string], Record<string, unknown>>(`SELECT * FROM "TrayCount" WHERE "trayId" = ? ORDER BY "id"`)
    .all(id);

describe('what a phone sends', () => {
  it('is kept as it was counted, with one line of audit a tray', async () => {
    const [one, two] = [await tray(), await tray()];
    const before = countRows('AuditEntry');
    const places = { normal: [3, 4, 8, 9, 11] };
    const note = { kind: 'note', id: newId(), trayId: two.id, dish: 2, on: '2026-11-24', text: ' a little mould ' };
    const answers = await send([
      countOf(one, { places }),
      countOf(one, { dishId: one.dishes[1]?.id, found: { ...NOTHING_FOUND, abnormal: 1 } }),
      { ...note, madeAt: '2026-11-24T17:00:00Z' },
    ]);
    expect(answers.map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'kept']);
    expect(rowsOf(one)[0]).toMatchObject({
      ...{
        normal: 5,
        dead: 0,
        counted: 1,
        on: '2026-11-25',
        byName: VOLUNTEER.name,
        countedBy: null,
        deviceId: DEVICE,
      },
      places: JSON.stringify(places),
    });
    const kept = connections().rows.prepare(`SELECT * FROM "TrayNote" WHERE "trayId" = ?`).get(two.id);
    expect(kept).toMatchObject({ dish: 2, kind: 'note', text: 'a little mould', byName: VOLUNTEER.name });
    expect(countRows('AuditEntry')).toBe(before + 2);
    expect(lastAuditLine()).toMatchObject({ command: 'add-bench-entries', entity: 'tray', entityId: two.id });
  });

  it('is known when it comes again, whoever sends it, and then not written twice', async () => {
    const of = await tray();
    const entry = countOf(of, { replaces: [], countedBy: VOLUNTEER.name });
    expect(await sendOne(entry)).toEqual({ id: entry.id, outcome: 'kept' });
    expect(await sendOne(entry)).toEqual({ id: entry.id, outcome: 'known' });
    expect(await sendOne(entry, STEWARD)).toEqual({ id: entry.id, outcome: 'known' });
    expect((await send([entry, entry])).map(({ outcome }) => outcome)).toEqual(['known', 'known']);
    const twice = countOf(of, { dishId: of.dishes[1]?.id });
    expect((await send([twice, twice])).map(({ outcome }) => outcome)).toEqual(['kept', 'known']);
    expect(rowsOf(of)).toHaveLength(2);
  });

  it.each([
    ['another number', { found: { ...NOTHING_FOUND, normal: 6 } }],
    ['a count taken back', { found: null }],
    ['another day', { on: '2026-11-24' }],
    ['another moment', { madeAt: '2026-11-25T08:00:01.000Z' }],
  ])('is refused when %s was sent under its mark before', async (_, change) => {
    const of = await tray();
    const entry = countOf(of);
    await sendOne(entry);
    expect(await sendOne({ ...entry, ...change })).toMatchObject({ outcome: 'refused', message: /before/ });
    expect(rowsOf(of)).toHaveLength(1);
  });

  it('names whoever counted when somebody else sends it', async () => {
    const of = await tray();
    await send([countOf(of, { countedBy: 'Wren' })], STEWARD);
    expect(rowsOf(of)[0]).toMatchObject({ byId: STEWARD.id, byName: STEWARD.name, countedBy: 'Wren' });
  });

  it.each([
    ['a tray that is not here', () => ({ trayId: 'no-such-tray' }), /not in the collection/],
    ['a dish of another tray', (other: Tray) => ({ dishId: other.dishes[0]?.id }), /no such dish/],
    ['a day before the tray was set', () => ({ on: '2026-11-17' }), /was set on 2026-11-18/],
    ['a day after tomorrow', () => ({ on: '2026-11-27' }), /still to come/],
    ['a day that does not exist', () => ({ on: '2026-02-30' }), /date/],
    ['less than nothing', () => ({ found: { ...NOTHING_FOUND, dead: -1 } }), /whole number/],
    ['half a seed', () => ({ found: { ...NOTHING_FOUND, dead: 0.5 } }), /whole number/],
    ['more than any dish holds', () => ({ found: { ...NOTHING_FOUND, hard: 10_001 } }), /10000/],
    ['a correction of a count that is not here', () => ({ replaces: [newId()] }), /not here/],
    ['an unknown kind', () => ({ kind: 'guess' }), /cannot read/],
  ])('is refused in words for %s, and what came with it is kept', async (_, change, message) => {
    const [of, other] = [await tray(), await tray()];
    const bad = countOf(of, change(other));
    const good = countOf(of, { dishId: of.dishes[1]?.id });
    const [first, second] = await send([bad, good]);
    expect(first).toMatchObject({ id: bad.id, outcome: 'refused', message });
    expect(second).toEqual({ id: good.id, outcome: 'kept' });
    expect(rowsOf(of).map(({ id }) => id)).toEqual([good.id]);
  });

  it('may be for the day the tray was set and for tomorrow, where the phone is already', async () => {
    const of = await tray();
    const answers = await send([countOf(of, { on: '2026-11-18' }), countOf(of, { on: '2026-11-26' })]);
    expect(answers.map(({ outcome }) => outcome)).toEqual(['kept', 'kept']);
  });

  it('replaces only counts of its own dish and day', async () => {
    const of = await tray();
    const first = countOf(of);
    await send([first]);
    const right = countOf(of, { found: { ...NOTHING_FOUND, normal: 6 }, replaces: [first.id] });
    const otherDish = countOf(of, { dishId: of.dishes[1]?.id, replaces: [first.id] });
    const otherDay = countOf(of, { on: '2026-11-24', replaces: [first.id] });
    expect((await send([right, otherDish, otherDay])).map(({ outcome }) => outcome)).toEqual([
      'kept',
      'refused',
      'refused',
    ]);
  });

  it('is kept when what it corrects was refused beside it', async () => {
    const of = await tray();
    const slip = countOf(of, { found: { ...NOTHING_FOUND, normal: 55_555 } });
    const right = countOf(of, { replaces: [slip.id] });
    expect((await send([slip, right])).map(({ outcome }) => outcome)).toEqual(['refused', 'kept']);
    expect((await send([slip, right])).map(({ outcome }) => outcome)).toEqual(['refused', 'known']);
  });

  it('is kept when a dish holds fewer seeds than were counted: that is asked about, not lost', async () => {
    const of = await tray({ dishes: [50] });
    expect(await sendOne(countOf(of, { found: { ...NOTHING_FOUND, normal: 51 } }))).toMatchObject({ outcome: 'kept' });
  });

  it.each(['closed', 'given-up'])('is kept for a tray that is %s meanwhile, and the audit says so', async (status) => {
    const of = await tray();
    connections().bulk.prepare(`UPDATE "Tray" SET "status" = ? WHERE "id" = ?`).run(status, of.id);
    expect(await sendOne(countOf(of))).toMatchObject({ outcome: 'kept' });
    expect(lastAuditLine()?.summary).toContain(status === 'closed' ? 'closed already' : 'given up');
  });

  it('is not lost over where seeds were tapped', async () => {
    const of = await tray();
    expect(await sendOne(countOf(of, { places: { normal: ['left', 'right'] } }))).toMatchObject({ outcome: 'kept' });
    expect(rowsOf(of)[0]?.places).toBeNull();
  });

  it('is refused as a whole only when it cannot be answered', async () => {
    const of = await tray();
    const before = countRows('AuditEntry');
    const attempts = [
      { deviceId: DEVICE, entries: [countOf(of), { ...countOf(of), id: 'mine' }] },
      { deviceId: '../etc', entries: [countOf(of)] },
      { deviceId: DEVICE, entries: [] },
      { deviceId: DEVICE, entries: Array.from({ length: MOST_ENTRIES_SENT + 1 }, () => countOf(of)) },
    ];
    for (const attempt of attempts) {
      expect((await refusal(addBenchEntries(VOLUNTEER, attempt))).code).toBe('invalid-input');
    }
    expect((await refusal(addBenchEntries(VISITOR, attempts[0]))).code).toBe('not-allowed');
    expect(rowsOf(of)).toEqual([]);
    expect(countRows('AuditEntry')).toBe(before);
  });

  it('may be as much as one batch holds', async () => {
    const of = await tray();
    const entries = Array.from({ length: MOST_ENTRIES_SENT }, () => countOf(of));
    expect((await send(entries)).every(({ outcome }) => outcome === 'kept')).toBe(true);
    expect(rowsOf(of)).toHaveLength(MOST_ENTRIES_SENT);
  });

  it('is kept up to the last millisecond of 2199, so that there are ids left above the highest one seen', async () => {
    const of = await tray();
    const [last] = idsAround(Date.UTC(2200, 0, 1));
    expect(await sendOne(countOf(of, { id: last }))).toMatchObject({ outcome: 'kept' });
    const settled = newIdAfter([last]);
    expect(settled > last && isUuidV7(settled)).toBe(true);
  });

  it('is refused from a clock that is past 2199, whatever is sent, and nothing of it is kept', async () => {
    const of = await tray();
    const [, first] = idsAround(Date.UTC(2200, 0, 1));
    for (const id of [first, 'ffff0000-0000-7000-8000-000000000000', 'ffffffff-ffff-7fff-bfff-ffffffffffff']) {
      expect((await refusal(send([countOf(of, { id })]))).code, id).toBe('invalid-input');
      expect(sentPhotoSchema.safeParse(photoOf(of, id)).success, id).toBe(false);
    }
    expect(rowsOf(of)).toEqual([]);
    expect(sentPhotoSchema.safeParse(photoOf(of, newId())).success).toBe(true);
  });

  it('is refused with an id that would not sort: of another version, in capitals, cut short or with a blank', async () => {
    const of = await tray();
    const id = newId();
    const broken = [id.toUpperCase(), id.replace(/-7/, '-4'), `-${id.slice(1)}`, id.slice(0, -1), `${id} `, ''];
    for (const one of broken) {
      expect((await refusal(send([countOf(of, { id: one })]))).code, one).toBe('invalid-input');
    }
    expect(rowsOf(of)).toEqual([]);
  });
});
