import { connections } from '@/lib/server/database/connections';

export interface PacketNow {
  id: string;
  lotId: string;
  lotNumber: string;
  seeds: number;
  lastFrom: string;
}

export function packetsNow(): PacketNow[] {
  return connections()
    .rows.prepare<[], PacketNow>(
      `SELECT p."id", p."lotId", l."number" AS "lotNumber",
         (SELECT COALESCE(SUM("seeds"), 0) FROM "Movement" WHERE "packetId" = p."id") AS "seeds",
         (SELECT MAX("from") FROM "Placement" WHERE "packetId" = p."id") AS "lastFrom"
       FROM "Packet" p JOIN "Lot" l ON l."id" = p."lotId" ORDER BY p."rowid"`,
    )
    .all();
}

export const ids = (sql: string): string[] => connections().rows.prepare<[], unknown>(sql).pluck().all().map(String);
export const openStores = () => ids(`SELECT "id" FROM "Store" WHERE "closedOn" IS NULL ORDER BY "rowid"`);

interface StoreNow {
  id: string;
  name: string;
  kind: string;
  version: number;
  parentId: string | null;
}

export const storesNow = () =>
  connections()
    .rows.prepare<[], StoreNow>(`SELECT "id", "name", "kind", "version", "parentId" FROM "Store" ORDER BY "rowid"`)
    .all();
