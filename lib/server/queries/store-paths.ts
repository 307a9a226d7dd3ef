import 'server-only';
import { reader } from '../database/connections';

/** Where something lies, from the outermost store inwards: freezer, shelf, box. */
export interface StorePath {
  steps: { id: string; name: string }[];
  /** degrees C that the innermost is meant to keep */
  targetTemperatureC: number;
  /** it is a partner bank's, or stands in one that is */
  atPartnerBank: boolean;
}

/** Deeper than any freezer, shelf and box; ends the walk should nesting ever be broken. */
const DEEPEST = 20;

/** The path of every store, closed ones too, by id: one statement; a bank has tens of stores. */
export async function findStorePaths(): Promise<Map<string, StorePath>> {
  const stores = await reader().store.findMany({
    select: { id: true, name: true, kind: true, parentId: true, targetTemperatureC: true },
  });
  const byId = new Map(stores.map((store) => [store.id, store]));
  return new Map(
    stores.map((store): [string, StorePath] => {
      const around = [store];
      for (let next = store.parentId; next !== null && around.length < DEEPEST; ) {
        const outer = byId.get(next);
        if (!outer) break;
        around.unshift(outer);
        next = outer.parentId;
      }
      const path = {
        steps: around.map(({ id, name }) => ({ id, name })),
        targetTemperatureC: store.targetTemperatureC,
        atPartnerBank: around.some(({ kind }) => kind === 'partner-bank'),
      };
      return [store.id, path];
    }),
  );
}
