import type { Prisma } from '@/generated/prisma/client';
import { freezingWarning } from '@/lib/domain/longevity/equation-limits';
import { sealingWarning } from '@/lib/domain/moisture/sealing-warning';
import { connections } from '../database/connections';
import { loadCropJudging } from '../judging/load-crop-judging';
import { packetsInside } from '../stores/packets-in-store';
import { fieldError } from './field-error';

/** Deeper than any freezer, shelf and box; ends the walk should nesting ever be broken. */
const DEEPEST = 20;

interface WantedPlace {
  storeId: string;
  /** the day from which it is to lie there */
  from: string;
  container: string;
  moisturePercent?: number | null | undefined;
  cropId: string;
  /** where the packet lies now; null for one that is still to be made */
  presentStoreId: string | null;
  /** ticked by somebody who has read the warning about its moisture */
  storeAnyway: boolean;
  /** ticked by somebody who has read that the store is full */
  overfill: boolean;
}

interface Place {
  name: string;
  /** what lies there is held for this bank by another one */
  atPartnerBank: boolean;
}

/**
 * Checks where a packet is to lie: the store exists and still takes seed in, it is not full, and moist seed is not
 * frozen or sealed unawares.
 *
 * @throws AppError beside `storeId` or `moisturePercent`, with word to tick `overfill` or `storeAnyway` where somebody
 *   who knows better may
 */
export async function requireSafePlacement(tx: Prisma.TransactionClient, wanted: WantedPlace): Promise<Place> {
  const around = await storeWithThoseAround(tx, wanted.storeId);
  const [store] = around;
  if (!store) throw fieldError({ storeId: 'This store is no longer there: choose another.' });
  const closed = around.find(({ closedOn }) => closedOn !== null && wanted.from >= closedOn);
  if (closed) {
    throw fieldError({ storeId: `${closed.name} has been closed since ${closed.closedOn}: choose another store.` });
  }
  const warnings = {
    ...(wanted.overfill ? {} : await fullStore(tx, around, wanted.presentStoreId)),
    ...(wanted.storeAnyway ? {} : tooMoist(store, wanted)),
  };
  if (Object.keys(warnings).length > 0) throw fieldError(warnings);
  return { name: store.name, atPartnerBank: around.some(({ kind }) => kind === 'partner-bank') };
}

/** Whether a store is a partner bank's, or stands in one that is. */
export async function isAtPartnerBank(tx: Prisma.TransactionClient, storeId: string): Promise<boolean> {
  return (await storeWithThoseAround(tx, storeId)).some(({ kind }) => kind === 'partner-bank');
}

/** The same for seed that stays where it is and is only packed anew. */
export function requireSafePacking(
  place: { name: string; targetTemperatureC: number },
  wanted: Pick<WantedPlace, 'container' | 'moisturePercent' | 'cropId' | 'storeAnyway'>,
): void {
  const warnings = wanted.storeAnyway ? null : tooMoist(place, wanted);
  if (warnings) throw fieldError(warnings);
}

/** Everything that is to be said of this moisture in this container and store; null where nothing is. */
function tooMoist(
  { name, targetTemperatureC: temperatureC }: { name: string; targetTemperatureC: number },
  { moisturePercent, container, cropId }: Pick<WantedPlace, 'container' | 'moisturePercent' | 'cropId'>,
): Record<string, string> | null {
  if (moisturePercent === undefined || moisturePercent === null) return null;
  const freezing = freezingWarning({ moisturePercent, temperatureC });
  const seed = loadCropJudging(connections().rows, [cropId]).get(cropId)?.seed ?? null;
  const warning = freezing ?? sealingWarning({ moisturePercent, temperatureC, container, seed });
  if (!warning) return null;
  const storeAnyway = freezing
    ? `${name} is below freezing. Tick this only if you know that this seed bears it.`
    : 'Tick this only if it cannot be dried first.';
  return { moisturePercent: warning, storeAnyway };
}

async function fullStore(
  tx: Prisma.TransactionClient,
  around: StoreAround[],
  presentStoreId: string | null,
): Promise<Record<string, string> | null> {
  // A packet that only goes from one shelf of a full freezer to another makes it no fuller.
  const already = presentStoreId === null ? [] : await storeWithThoseAround(tx, presentStoreId);
  for (const { id, name, capacityPackets } of around) {
    if (capacityPackets === null || already.some((store) => store.id === id)) continue;
    const { packets: inside } = await packetsInside(tx, id);
    if (inside < capacityPackets) continue;
    return {
      storeId: `${name} is full: ${inside} ${inside === 1 ? 'packet lies' : 'packets lie'} in it, and ${capacityPackets} fit.`,
      overfill: 'Tick this if it fits in all the same.',
    };
  }
  return null;
}

type StoreAround = NonNullable<Awaited<ReturnType<typeof readStore>>>;

async function storeWithThoseAround(tx: Prisma.TransactionClient, storeId: string): Promise<StoreAround[]> {
  const around: StoreAround[] = [];
  for (let next: string | null = storeId; next !== null && around.length < DEEPEST; ) {
    const store: StoreAround | null = await readStore(tx, next);
    if (!store) break;
    around.push(store);
    next = store.parentId;
  }
  return around;
}

const readStore = (tx: Prisma.TransactionClient, id: string) =>
  tx.store.findUnique({
    where: { id },
    select: {
      id: true,
      name: true,
      kind: true,
      parentId: true,
      closedOn: true,
      capacityPackets: true,
      targetTemperatureC: true,
    },
  });
