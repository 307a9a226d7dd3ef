import type { Prisma } from '@/generated/prisma/client';
import { type Unready, unready } from '@/lib/domain/germination/bench/dish-state';
import { trayMethodInWords } from '@/lib/domain/germination/bench/tray-method';
import { trayResult } from '@/lib/domain/germination/bench/tray-result';
import { closeTraySchema } from '@/lib/schemas/tray-counts';
import { AppError } from '../app-error';
import { newId } from '../new-id';
import { latestVersion, type TestAsWritten } from '../trays/latest-version';
import { type TrayInHand, trayInHand } from '../trays/tray-in-hand';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { findTwinTest } from './find-twin-test';
import { nextTestNumber } from './next-test-number';

type Transaction = Prisma.TransactionClient;

/**
 * Ends a tray: its counts become a finished germination test of the same number, and the lot is judged anew. A tray that
 * was reopened has its test corrected by a further one; where nothing changed, the test that stands goes on standing.
 * Counts that arrive at the same moment are either in it, or are shown as late and wait for a reopening.
 *
 * @returns number of the test that speaks for the tray now
 * Refusals: counts that disagree, seed not classed or counted twice; beside `anotherTest` a test written by hand that
 * says the same.
 * Checked in tests/server/commands/close-tray.test.ts
 */
export const closeTray = defineCommand({
  name: 'close-tray',
  role: 'volunteer',
  schema: closeTraySchema,
  async run({ tx, person, audit, rejudge }, input) {
    const tray = await trayInHand(tx, input.trayId, 'open');
    refuseUnready(tray);
    const { replicates, finishedOn } = trayResult(tray.states);
    const before = await latestVersion(tx, tray.id);
    const lotId = tray.lot.id;
    const twin = { lotId, setOn: tray.setOn, finishedOn, replicates };
    if (!input.anotherTest) await refuseHandWritten(tx, twin, before?.id);

    const written = { ...twin, method: trayMethodInWords(tray), notes: await notesOf(tx, tray) };
    const isSame = before !== null && saysTheSame(before, written);
    const test = isSame ? before : await writeTest(tx, tray, person.id, before, written);

    const now = new Date();
    await tx.tray.update({
      where: { id: tray.id },
      data: { status: 'closed', closedOn: finishedOn, closedAt: now, version: { increment: 1 } },
    });
    const seeds = replicates.reduce((sum, replicate) => sum + replicate.seeds, 0);
    const normal = replicates.reduce((sum, replicate) => sum + replicate.normal, 0);
    const result = `${normal} normal of ${seeds} seeds`;
    if (!isSame) {
      await audit({
        entity: 'germination test',
        entityId: test.id,
        summary: before
          ? `Corrected ${before.number} as ${test.number} by closing tray ${tray.number} again, lot ${tray.lot.number}: ${result}`
          : `Recorded ${test.number} on lot ${tray.lot.number} by closing its tray: ${result}`,
        after: { number: test.number, trayId: tray.id, ...written },
      });
      if (before) {
        await audit({
          entity: 'germination test',
          entityId: before.id,
          summary: `Corrected by ${test.number}: tray ${tray.number} was reopened and closed again`,
        });
      }
    }
    await audit({
      entity: 'tray',
      entityId: tray.id,
      summary: isSame
        ? `Closed tray ${tray.number} again; nothing had changed, and ${test.number} stands: ${result}`
        : `Closed tray ${tray.number} as test ${test.number}: ${result}`,
      // Whatever is written down later is told by not being among these: clocks and order of arrival say nothing.
      after: { test: test.number, finishedOn, counts: tray.counts.map(({ id }) => id) },
    });
    if (!isSame) rejudge([...new Set([lotId, ...(before ? [before.lotId] : [])])]);
    return { number: test.number };
  },
});

interface ResultToWrite {
  lotId: string;
  setOn: string;
  finishedOn: string;
  replicates: { seeds: number; normal: number; abnormal: number; hard: number; fresh: number; dead: number }[];
  method: string | null;
  notes: string | null;
}

async function writeTest(
  tx: Transaction,
  tray: TrayInHand,
  byId: string,
  before: TestAsWritten | null,
  { replicates, ...result }: ResultToWrite,
): Promise<{ id: string; number: string }> {
  const id = newId();
  const number = before ? await nextTestNumber(tx) : tray.number;
  await tx.germinationTest.create({
    data: {
      ...{ id, number, byId, packetId: tray.packetId, trayId: tray.id, correctsId: before?.id ?? null, ...result },
      // The seed went out once: the first test names the line, as with every correction.
      withdrawalId: before ? null : tray.withdrawalId,
    },
  });
  await tx.replicate.createMany({
    data: replicates.map((replicate, index) => ({ testId: id, position: index + 1, ...replicate })),
  });
  return { id, number };
}

function refuseUnready({ number, states }: TrayInHand): void {
  const reasons = unready(states);
  if (reasons.length === 0) return;
  throw new AppError('refused', `Tray ${number} is not ready. ${reasons.map(unreadyInWords).join(' ')}`);
}

function unreadyInWords(why: Unready): string {
  const dish = `Dish ${why.position}`;
  if (why.reason === 'disagreement') return `${dish}: counts of ${why.on} disagree; say which holds.`;
  if (why.reason === 'too-many') return `${dish}: ${why.over} more seeds were counted than set.`;
  return `${dish}: ${why.remaining} ${why.remaining === 1 ? 'seed is' : 'seeds are'} not classed yet.`;
}

/** Somebody may have written the finished test down by hand: two of it would pretend twice the evidence. */
async function refuseHandWritten(
  tx: Transaction,
  twin: Pick<ResultToWrite, 'lotId' | 'setOn' | 'finishedOn' | 'replicates'>,
  ownId: string | undefined,
): Promise<void> {
  const alike = await findTwinTest(tx, { ...twin, ownId, onlyByHand: true });
  if (!alike) return;
  throw fieldError({
    anotherTest: `${alike} says the same of the same days, written down by hand. If it is this tray's test, it is closed by it: give the tray up. If it is another test, tick this.`,
  });
}

/** What was noted about the tray when it was set and while it was counted. */
async function notesOf(tx: Transaction, { id, notes }: TrayInHand): Promise<string | null> {
  const remarks = await tx.trayNote.findMany({
    where: { trayId: id, kind: 'note', text: { not: null } },
    orderBy: [{ on: 'asc' }, { id: 'asc' }],
    select: { on: true, dish: true, text: true },
  });
  const lines = remarks.map(({ on, dish, text }) => `${on}${dish === null ? '' : `, dish ${dish}`}: ${text}`);
  return [notes, ...lines].filter((line) => line !== null && line !== '').join('\n') || null;
}

function saysTheSame(before: TestAsWritten, now: ResultToWrite): boolean {
  return (
    before.lotId === now.lotId &&
    before.setOn === now.setOn &&
    before.finishedOn === now.finishedOn &&
    before.method === now.method &&
    before.notes === now.notes &&
    JSON.stringify(before.replicates) === JSON.stringify(now.replicates)
  );
}
