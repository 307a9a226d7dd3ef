import type { Prisma } from '@/generated/prisma/client';
import { type StorePhase, storeTimeline } from '@/lib/domain/stock/store-phases';
import { fieldError } from '../commands/field-error';
import { phaseOf } from '../judging/store-climates';

/** What of a store changes from a day on. What is left out stays as it is. */
interface PhaseChange {
  parentId?: string | null;
  target?: { temperatureC: number; relativeHumidity: number | null } | null;
}

interface Change {
  storeId: string;
  byId: string;
  /** null: what was written of the present phase was wrong, and this holds from its beginning */
  from: string | null;
  change: PhaseChange;
  /** where refusals stand in the form */
  fields: { from: string; parent: string };
}

/**
 * Writes from when on a store stood elsewhere or was set otherwise.
 *
 * @returns the day from which it holds
 * @throws AppError beside `fields.from` when the present phase began later, beside `fields.parent` when the store would
 *   have lain inside itself on some day
 */
export async function writePhase(tx: Prisma.TransactionClient, asked: Change): Promise<string> {
  const { storeId, byId, change, fields } = asked;
  const all = await tx.storePhase.findMany({ orderBy: { id: 'asc' } });
  const own = all.filter((phase) => phase.storeId === storeId);
  const present = own.reduce((latest, phase) => (phase.from >= latest.from ? phase : latest));
  const from = asked.from ?? present.from;
  if (from < present.from) {
    throw fieldError({ [fields.from]: `It has been as it is since ${present.from}: choose that day or later.` });
  }
  const data = {
    storeId,
    from,
    parentId: change.parentId === undefined ? present.parentId : change.parentId,
    targetTemperatureC:
      change.target === undefined ? present.targetTemperatureC : (change.target?.temperatureC ?? null),
    targetRelativeHumidity:
      change.target === undefined ? present.targetRelativeHumidity : (change.target?.relativeHumidity ?? null),
    byId,
  };
  refuseNonsense([...all, data].map(phaseOf), storeId, fields.parent);
  await tx.storePhase.create({ data });
  return from;
}

function refuseNonsense(phases: StorePhase[], storeId: string, parentField: string): void {
  const byStore = new Map<string, StorePhase[]>();
  for (const phase of phases) byStore.set(phase.storeId, [...(byStore.get(phase.storeId) ?? []), phase]);
  const timeline = storeTimeline(
    storeId,
    (id) => byStore.get(id) ?? [],
    () => null,
  );
  if (timeline.ok) return;
  throw fieldError({
    [parentField]:
      timeline.reason === 'inside-itself'
        ? 'A store cannot lie inside itself, then or now: choose another.'
        : 'A store that stands by itself needs a temperature of its own: set one first.',
  });
}
