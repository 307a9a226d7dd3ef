import 'server-only';
import { type DayCount, dayCounts } from '@/lib/domain/germination/bench/day-counts';
import { type DishState, dishStates, type Unready, unready } from '@/lib/domain/germination/bench/dish-state';
import { type PlannedCount, plannedCounts } from '@/lib/domain/germination/bench/planned-counts';
import { type TrayCourse, trayCourse } from '@/lib/domain/germination/bench/tray-course';
import { trayMethodInWords } from '@/lib/domain/germination/bench/tray-method';
import { summariseTimeCourse, type TimeCourse } from '@/lib/domain/germination/time-course/summarise-time-course';
import { connections, reader } from '../database/connections';
import { today } from '../today';
import { selectCount, type WrittenCount, writtenCount } from '../trays/count-row';
import { latestVersion } from '../trays/latest-version';
import { findHistory, type HistoryLine } from './history';
import { type CropForTesting, cropForTesting, selectCropForTesting } from './lots-for-testing';

export interface TrayRemark {
  id: string;
  kind: 'note' | 'photo';
  /** position of the dish; null: the whole tray */
  dish: number | null;
  on: string;
  text: string | null;
  width: number | null;
  height: number | null;
  byName: string;
}

/** A tray with everything its page says. */
export interface TrayPage {
  id: string;
  number: string;
  status: 'open' | 'closed' | 'given-up';
  setOn: string;
  finalCountOn: string;
  closedOn: string | null;
  /** in one line; null when nothing was noted */
  method: string | null;
  prechillDays: number;
  place: string | null;
  notes: string | null;
  seriesId: string;
  groupNumber: number;
  packet: { id: string; number: string } | null;
  lot: { id: string; number: string; accessionName: string; treatment: string | null };
  crop: CropForTesting;
  plan: PlannedCount[];
  /** in order of position */
  states: DishState<WrittenCount>[];
  /** every day of every dish that was written down, those taken back included */
  allStanding: DayCount<WrittenCount>[];
  /** what stands between it and its result */
  unready: Unready[];
  course: TimeCourseOfTray;
  remarks: TrayRemark[];
  /** written down after it was closed, so not in its test; empty while it is open */
  late: WrittenCount[];
  /** the test that speaks for it; null while it was never closed */
  test: { number: string } | null;
  history: HistoryLine[];
}

export type TimeCourseOfTray =
  | { ok: true; course: TimeCourse; dishes: Extract<TrayCourse, { ok: true }>['dishes'] }
  | { ok: false; reason: Extract<TrayCourse, { ok: false }>['reason'] | 'did-not-converge' };

/**
 * One tray by its number.
 *
 * @returns null when there is no such tray
 * Checked in tests/server/queries/tray-page.test.ts
 */
export async function getTrayPage(number: string): Promise<TrayPage | null> {
  const tray = await reader().tray.findUnique({
    where: { number },
    include: {
      packet: { select: { id: true, number: true } },
      lot: {
        select: {
          id: true,
          number: true,
          treatment: true,
          accession: { select: { name: true, crop: { select: selectCropForTesting } } },
        },
      },
      dishes: { select: { id: true, position: true, seeds: true }, orderBy: { position: 'asc' } },
      counts: { select: selectCount, orderBy: { id: 'asc' } },
      remarks: {
        select: { id: true, kind: true, dish: true, on: true, text: true, width: true, height: true, byName: true },
        orderBy: [{ on: 'asc' }, { id: 'asc' }],
      },
    },
  });
  if (!tray) return null;
  const [test, history, takenIn] = await Promise.all([
    latestVersion(connections().reader, tray.id),
    findHistory([{ entity: 'tray', ids: [tray.id] }]),
    tray.status === 'closed' ? countsTakenIn(tray.id) : null,
  ]);
  const counts = tray.counts.map(writtenCount);
  const states = dishStates(tray.dishes, counts);
  const countedOn = states.flatMap(({ days }) => days.map(({ on }) => on));
  return {
    id: tray.id,
    number: tray.number,
    status: tray.status as TrayPage['status'],
    setOn: tray.setOn,
    finalCountOn: tray.finalCountOn,
    closedOn: tray.closedOn,
    method: trayMethodInWords(tray),
    prechillDays: tray.prechillDays,
    place: tray.place,
    notes: tray.notes,
    seriesId: tray.seriesId,
    groupNumber: tray.groupNumber,
    packet: tray.packet,
    lot: {
      id: tray.lot.id,
      number: tray.lot.number,
      treatment: tray.lot.treatment,
      accessionName: tray.lot.accession.name,
    },
    crop: cropForTesting(tray.lot.accession.crop),
    plan: plannedCounts(tray, countedOn, today()),
    states,
    allStanding: dayCounts(counts),
    unready: unready(states),
    course: courseOf(states, tray.setOn),
    remarks: tray.remarks.map((remark) => ({ ...remark, kind: remark.kind as TrayRemark['kind'] })),
    late: takenIn === null ? [] : counts.filter(({ id }) => !takenIn.has(id)),
    test: test && { number: test.number },
    history,
  };
}

/** The counts of a tray that were in it when it was closed last: clocks and order of arrival cannot tell. */
async function countsTakenIn(trayId: string): Promise<Set<string>> {
  const entry = await reader().auditEntry.findFirst({
    where: { entity: 'tray', entityId: trayId, command: 'close-tray' },
    orderBy: { id: 'desc' },
    select: { after: true },
  });
  const after = entry?.after ? (JSON.parse(entry.after) as { counts?: string[] }) : {};
  return new Set(after.counts);
}

function courseOf(states: readonly DishState[], setOn: string): TimeCourseOfTray {
  const counted = trayCourse(states, setOn);
  if (!counted.ok) return counted;
  const course = summariseTimeCourse(counted.dishes);
  return course.ok ? { ok: true, course, dishes: counted.dishes } : course;
}
