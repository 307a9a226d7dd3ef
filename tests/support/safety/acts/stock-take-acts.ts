import { choicesFor, type Finding } from '@/lib/domain/stock/stock-take-difference';
import { closeStockTake } from '@/lib/server/commands/close-stock-take';
import { recordStockTakeLine } from '@/lib/server/commands/record-stock-take-line';
import { startStockTake } from '@/lib/server/commands/start-stock-take';
import { connections } from '@/lib/server/database/connections';
import { STEWARD } from '../../people';
import { type Act, volunteer } from './act';
import { packetsNow, storesNow } from './bank-now';

interface StockTakeLineNow {
  id: string;
  packetId: string;
  version: number;
  finding: Finding;
  expectedSeeds: number;
  seeds: number | null;
  /** 1 where the packet's last placement is in the store or inside it */
  belongsHere: number;
}

const stockTakeLines = ({ id, storeId }: { id: string; storeId: string }): StockTakeLineNow[] =>
  connections()
    .rows.prepare<[string, string], StockTakeLineNow>(
      `WITH RECURSIVE inside(id) AS (
         SELECT ? UNION SELECT s."id" FROM "Store" s JOIN inside ON s."parentId" = inside.id)
       SELECT l."id", l."packetId", l."version", l."finding", l."expectedSeeds", l."seeds",
         (SELECT pl."storeId" FROM "Placement" pl WHERE pl."packetId" = l."packetId"
          ORDER BY pl."from" DESC, pl."id" DESC LIMIT 1) IN (SELECT id FROM inside) AS "belongsHere"
       FROM "StockTakeLine" l WHERE l."stockTakeId" = ? ORDER BY l."id"`,
    )
    .all(storeId, id);

/** A stock-take: begun, three packets looked at, closed. */
export const STOCK_TAKE_ACTS: Record<string, Act> = {
  'take stock': (choose) => {
    const open = connections()
      .rows.prepare<[], { id: string; storeId: string }>(
        `SELECT "id", "storeId" FROM "StockTake" WHERE "status" = 'open'`,
      )
      .get();
    if (!open) return volunteer(startStockTake, { storeId: choose.one(storesNow())?.id });
    const lines = stockTakeLines(open);
    if (lines.length < 3 && choose.whole(0, 3) > 0) {
      const packet = choose.one(packetsNow());
      if (!packet) return null;
      const version = lines.find(({ packetId }) => packetId === packet.id)?.version ?? 0;
      const found = choose.one([
        { finding: 'not-here' },
        { finding: 'here', amount: String(packet.seeds), unit: 'seeds' },
        { finding: 'here', amount: String(choose.whole(0, packet.seeds + 20)), unit: 'seeds' },
        { finding: 'here' },
      ]);
      return volunteer(recordStockTakeLine, { stockTakeId: open.id, packetId: packet.id, version, ...found });
    }
    const decisions = Object.fromEntries(
      lines.map(({ id, version, ...line }) => [
        id,
        { version, decision: choose.one(choicesFor({ ...line, belongsHere: line.belongsHere === 1 })) },
      ]),
    );
    const input = { stockTakeId: open.id, decisions, closeUnfinished: 'on' };
    return { command: closeStockTake, person: STEWARD, input };
  },
};
