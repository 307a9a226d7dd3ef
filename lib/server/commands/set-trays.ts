import type { Prisma } from '@/generated/prisma/client';
import { addDays } from '@/lib/domain/calendar/calendar-date';
import { methodChoices } from '@/lib/domain/germination/plan/method-choices';
import { sequentialPlanText } from '@/lib/schemas/sequential-plan';
import { setTraysInput, type TrayToSet } from '@/lib/schemas/set-trays';
import { AppError } from '../app-error';
import { defineCommand } from './command';
import { fieldError } from './field-error';
import { noSuchLot, refuseBeforeHarvest } from './require-lot-to-test';
import { findSeedForTray } from './seed-for-tray';
import { type TrayToWrite, writeTray } from './write-tray';

/**
 * Sets trays: for each lot its seed is taken out of the packet in the ledger, or named where it went out before, and its
 * dishes are laid out. All of them, or none.
 *
 * @returns the trays' numbers, in the order of the lots
 * Refusals beside the lot's fields ('trays.0.seedFrom'): an unknown lot, one listed twice or with a tray under way, a
 * packet overdrawn or of another lot, seed that is used already, a method of another crop, days that nobody knows.
 * Checked in tests/server/commands/set-trays.test.ts
 */
export const setTrays = defineCommand({
  name: 'set-trays',
  role: 'volunteer',
  schema: setTraysInput,
  async run(context, input) {
    const { tx, audit, rejudge } = context;
    const rows = input.trays.flatMap((tray, index) => (tray ? [{ tray, field: `trays.${index}` }] : []));
    const lots = await lotsByNumber(
      tx,
      rows.map(({ tray }) => tray.lot),
    );
    const errors: Record<string, string> = {};
    const ready: TrayToWrite[] = [];
    const listed = new Set<string>();
    for (const { tray, field } of rows) {
      try {
        if (listed.has(tray.lot)) throw fieldError({ lot: `Lot ${tray.lot} is listed twice: leave one of them out.` });
        listed.add(tray.lot);
        ready.push(await checkedTray(tx, input, tray, lots.get(tray.lot)));
      } catch (error) {
        // Every lot is looked at, so that all that is wrong is said at once.
        if (!(error instanceof AppError)) throw error;
        for (const [name, message] of Object.entries(error.fieldErrors)) {
          errors[name === 'setOn' ? name : `${field}.${name}`] ??= message;
        }
      }
    }
    if (Object.keys(errors).length > 0) throw fieldError(errors);
    const numbers: string[] = [];
    for (const tray of ready) numbers.push((await writeTray(context, tray)).number);
    await audit({
      entity: 'trays',
      entityId: numbers[0] ?? '',
      summary: `Set ${numbers.length} ${numbers.length === 1 ? 'tray' : 'trays'}: ${numbers.join(', ')}`,
    });
    rejudge(ready.map(({ lot }) => lot.id));
    return { numbers };
  },
});

type FoundLot = Awaited<ReturnType<typeof findLots>>[number];

const findLots = (tx: Prisma.TransactionClient, numbers: string[]) =>
  tx.lot.findMany({
    where: { number: { in: numbers } },
    select: {
      id: true,
      number: true,
      harvestedOn: true,
      trays: { where: { status: 'open' }, orderBy: { number: 'asc' }, select: { number: true, setOn: true } },
      accession: { select: { crop: { select: { germinationMethods: { orderBy: { id: 'asc' } } } } } },
    },
  });

async function lotsByNumber(tx: Prisma.TransactionClient, numbers: string[]): Promise<Map<string, FoundLot>> {
  return new Map((await findLots(tx, numbers)).map((lot) => [lot.number, lot]));
}

async function checkedTray(
  tx: Prisma.TransactionClient,
  { setOn, place }: { setOn: string; place?: string | undefined },
  tray: TrayToSet,
  lot: FoundLot | undefined,
): Promise<TrayToWrite> {
  if (!lot) throw noSuchLot(tray.lot);
  refuseBeforeHarvest(lot, { on: setOn, field: 'setOn' });
  const [underWay] = lot.trays;
  if (underWay && !tray.anyway) {
    throw fieldError({
      anyway: `Test ${underWay.number} of this lot is under way since ${underWay.setOn}. Tick to set another all the same, or leave the lot out.`,
    });
  }
  const choice = methodOf(lot, tray);
  const seeds = tray.dishes.reduce((sum, each) => sum + each, 0);
  return {
    lot: { id: lot.id, number: lot.number },
    seed: await findSeedForTray(tx, tray.seedFrom, { lot, seeds, setOn }),
    dishes: tray.dishes,
    series: null,
    setOn,
    substrate: choice?.substrate || null,
    temperatures: choice?.temperatures || null,
    light: choice?.light ?? false,
    preTreatment: tray.preTreatment ?? null,
    prechillDays: tray.prechillDays,
    ...countDaysOf(setOn, tray, choice?.method ?? null),
    countEveryDays: tray.countEveryDays ?? null,
    place: place ?? null,
    notes: tray.notes ?? null,
    sequentialPlan: tray.plan ? sequentialPlanText(tray.plan) : null,
  };
}

/** The way chosen; null where none was. */
function methodOf(lot: FoundLot, { method }: TrayToSet) {
  if (method === undefined) return null;
  const choice = methodChoices(lot.accession.crop.germinationMethods).find(({ key }) => key === method);
  if (!choice) throw fieldError({ method: 'This method is not one of the crop’s any more: choose another.' });
  return choice;
}

/** Days typed win over the method's; a method that names only the final count has its first on that day too. */
function countDaysOf(
  setOn: string,
  { firstCountDays, finalCountDays, prechillDays }: TrayToSet,
  method: { firstCountDays: number | null; finalCountDays: number | null } | null,
) {
  const final = finalCountDays ?? method?.finalCountDays ?? null;
  if (final === null) {
    throw fieldError({ finalCountDays: 'No method says when to count: write after how many days the last count is.' });
  }
  const first = firstCountDays ?? Math.min(method?.firstCountDays ?? final, final);
  if (first > final) {
    throw fieldError({ firstCountDays: `The first count cannot be after the last one, after ${final} days.` });
  }
  return {
    firstCountOn: addDays(setOn, prechillDays + first),
    finalCountOn: addDays(setOn, prechillDays + final),
  };
}
