import 'server-only';
import { connections } from '../database/connections';

/** A photograph of a tray or a dish; null when there is none of this id. */
export function getTrayPhoto(id: string): { id: string } | null {
  return (
    connections()
      .rows.prepare<[string], { id: string }>(`SELECT "id" FROM "TrayNote" WHERE "id" = ? AND "kind" = 'photo'`)
      .get(id) ?? null
  );
}
