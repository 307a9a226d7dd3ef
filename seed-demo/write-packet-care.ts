import { addDays } from '../lib/domain/calendar/calendar-date';
import { recordPacketCare } from '../lib/server/commands/record-packet-care';
import { splitPacket } from '../lib/server/commands/split-packet';
import { connections } from '../lib/server/database/connections';
import { DEMO_PERSON } from './demo-person';
import type { StoreKey } from './scenarios/story';
import type { WrittenHistory } from './write-history';

/** What was done to containers, days before today: of the youngest lot of an accession. */
const CARE = [
  { of: 'Kirk Geo Pickler', daysAgo: 380, what: 'desiccant', desiccant: 'silica-gel-blue', desiccantGrams: 15 },
  { of: 'Kirk Geo Pickler', daysAgo: 380, what: 'sealed' },
  { of: 'Ramsgarth Grey', daysAgo: 60, what: 'desiccant', desiccant: 'silica-gel', desiccantGrams: 20 },
  { of: 'Ramsgarth Grey', daysAgo: 60, what: 'sealed' },
  { of: 'Kirk Geo Yellow', daysAgo: 300, what: 'sealed' },
  { of: 'Kirk Geo Yellow', daysAgo: 12, what: 'opened', note: 'a hundred seeds for the school' },
] as const;

/** Barley that was dried and put away for the long run, beside the jar that people draw from. */
const BASE_STOCK = {
  of: 'Hill Field',
  daysAgo: 40,
  seeds: 2400,
  moisturePercent: 6.8,
  container: 'foil-pouch',
  store: 'freezer',
} as const;

/** Seals, openings and desiccants of a few packets, and one packet of base stock. */
export async function writePacketCare(
  history: WrittenHistory,
  storeIds: Record<StoreKey, string>,
  today: string,
): Promise<void> {
  for (const { of, daysAgo, ...done } of CARE) {
    const packetId = packetOfYoungestLot(history, of);
    await recordPacketCare(DEMO_PERSON, { packetId, on: addDays(today, -daysAgo), ...done });
  }
  const { of, daysAgo, seeds, store, ...packing } = BASE_STOCK;
  await splitPacket(DEMO_PERSON, {
    packetId: packetOfYoungestLot(history, of),
    amount: seeds,
    unit: 'seeds',
    role: 'base',
    storeId: storeIds[store],
    ...packing,
    sealed: true,
    from: addDays(today, -daysAgo),
  });
}

function packetOfYoungestLot({ lotIds }: WrittenHistory, accessionName: string): string {
  const [, ofAccession] = [...lotIds].find(([accession]) => accession.name === accessionName) ?? [];
  const row = connections()
    .bulk.prepare<[string], { id: string }>(
      `SELECT p."id" FROM "Packet" p JOIN "Lot" l ON l."id" = p."lotId"
       WHERE l."id" IN (SELECT "value" FROM json_each(?)) ORDER BY l."harvestedOn" DESC, p."number" LIMIT 1`,
    )
    .get(JSON.stringify(ofAccession ?? []));
  if (!row) throw new Error(`the demo has no packet of ${accessionName}`);
  return row.id;
}
