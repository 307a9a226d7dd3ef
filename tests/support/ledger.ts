import { connections } from '@/lib/server/database/connections';

export interface LedgerRow {
  id: string;
  packetId: string;
  on: string;
  reason: string;
  seeds: number;
  grams: number | null;
  seedsSd: number | null;
  note: string | null;
  correctsId: string | null;
  pairId: string | null;
  stockTakeId: string | null;
}

/** A packet's ledger as it is stored, in the order in which it was written. */
export const ledgerOf = (packetId: string): LedgerRow[] =>
  connections()
    .bulk.prepare<[string], LedgerRow>(`SELECT * FROM "Movement" WHERE "packetId" = ? ORDER BY "id"`)
    .all(packetId);

export const heldIn = (packetId: string): number => ledgerOf(packetId).reduce((sum, { seeds }) => sum + seeds, 0);

/** Writes lines into the ledger as they are, for what no command writes (any more). */
export function writeLines(...lines: Partial<LedgerRow>[]): void {
  const insert = connections().bulk.prepare(
    `INSERT INTO "Movement" ("id", "packetId", "on", "reason", "seeds", "grams", "seedsSd", "note", "byId", "correctsId", "pairId")
     VALUES (@id, @packetId, @on, @reason, @seeds, @grams, @seedsSd, @note, 'test-volunteer', @correctsId, @pairId)`,
  );
  const standard = { on: '2026-11-20', grams: null, seedsSd: 0, note: null, correctsId: null, pairId: null };
  connections().bulk.transaction(() => {
    for (const line of lines) insert.run({ ...standard, ...line });
  })();
}
