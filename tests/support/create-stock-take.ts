import { recordStockTakeLine } from '@/lib/server/commands/record-stock-take-line';
import { startStockTake } from '@/lib/server/commands/start-stock-take';
import { connections } from '@/lib/server/database/connections';
import { VOLUNTEER } from './people';

export interface LineRow {
  id: string;
  packetId: string;
  finding: string;
  expectedSeeds: number;
  seeds: number | null;
  seedsSd: number | null;
  grams: number | null;
  decision: string | null;
  version: number;
}

export const startIn = (storeId: string) => startStockTake(VOLUNTEER, { storeId });

/** Writes down a packet as counted by hand: '120' seeds, '' for a tick. */
export const look = (stockTakeId: string, packetId: string, amount = '', rest: Record<string, unknown> = {}) =>
  recordStockTakeLine(VOLUNTEER, {
    stockTakeId,
    packetId,
    finding: 'here',
    amount,
    unit: 'seeds',
    version: 0,
    ...rest,
  });

export const linesOf = (stockTakeId: string): LineRow[] =>
  connections()
    .bulk.prepare<[string], LineRow>(`SELECT * FROM "StockTakeLine" WHERE "stockTakeId" = ? ORDER BY "id"`)
    .all(stockTakeId);

/** Every line with this decision, as the review's form sends them; packets left out send none. */
export const decide = (stockTakeId: string, decisions: Record<string, string>) =>
  Object.fromEntries(
    linesOf(stockTakeId).flatMap(({ id, packetId, version }) =>
      decisions[packetId] === undefined ? [] : [[id, { version, decision: decisions[packetId] }] as const],
    ),
  );

/** The name of the box in which the decision about a packet stands. */
export const boxOf = (stockTakeId: string, packetId: string) =>
  `decisions.${linesOf(stockTakeId).find((line) => line.packetId === packetId)?.id}.decision`;
