import 'server-only';
import { yearOf } from '@/lib/domain/calendar/calendar-date';
import { seedsInLot } from '@/lib/domain/stock/seeds-in-lot';
import { spreadOfAmount, usualSeedWeightError } from '@/lib/domain/stock/spread-of-amount';
import { codeKey } from '@/lib/schemas/import/import-context';
import type { LotRecord } from '@/lib/schemas/import/records';
import { newId } from '../new-id';
import type { BulkWriter } from './bulk-writer';

/** Where lots go whose place the spreadsheet does not name: an ordinary room, to be corrected by moving them. */
const UNPLACED = { name: 'Place not known', kind: 'room', targetTemperatureC: 20, targetRelativeHumidity: 0.5 };
/** Where the spreadsheet names no container, seed is taken to follow the air of its store. */
const UNKNOWN_CONTAINER = 'paper-envelope';

/** @returns a function that writes one lot with its packet, place and deposit, and gives the lot's id for judging */
export function lotWriter(writer: BulkWriter): (record: LotRecord) => string[] {
  const { database } = writer;
  const accessions = new Map(
    database
      .prepare<[], { id: string; number: string; name: string; fewest: number | null; most: number | null }>(
        `SELECT a."id", a."number", a."name", MIN(f."lower") AS "fewest", MAX(f."upper") AS "most"
         FROM "Accession" a LEFT JOIN "CropFact" f ON f."cropId" = a."cropId" AND f."kind" = 'seeds per gram'
         GROUP BY a."id"`,
      )
      .all()
      .map((accession) => [codeKey(accession.number), accession]),
  );
  const stores = new Map(
    database
      .prepare<[], { id: string; name: string }>(`SELECT "id", "name" FROM "Store"`)
      .all()
      .map((store) => [store.name, store.id]),
  );
  const lotTaken = database.prepare(`SELECT 1 FROM "Lot" WHERE "number" = ?`);
  const packetTaken = database.prepare(`SELECT 1 FROM "Packet" WHERE "number" = ?`);

  const storeFor = (name: string | undefined) => {
    const wanted = name ?? UNPLACED.name;
    let id = stores.get(wanted);
    if (!id) {
      id = newId();
      writer.insert('Store', { id, ...UNPLACED, name: wanted });
      stores.set(wanted, id);
    }
    return id;
  };

  return (record) => {
    const accession = accessions.get(codeKey(record.accessionNumber));
    if (!accession) throw new Error(`accession ${record.accessionNumber} is gone`);
    const { fewest, most } = accession;
    const amount = seedsInLot({
      seedCount: record.seedCount ?? null,
      cleanWeightG: record.cleanWeightG ?? null,
      thousandSeedWeightG: record.thousandSeedWeightG ?? null,
      usualSeedsPerGram: fewest === null || most === null ? null : Math.sqrt(fewest * most),
    });
    const lotId = newId();
    const number =
      record.number ??
      writer.nextNumber(`L-${yearOf(record.harvestedOn)}`, 3, (taken) => lotTaken.get(taken) !== undefined);
    writer.insert('Lot', {
      id: lotId,
      number,
      accessionId: accession.id,
      harvestedOn: record.harvestedOn,
      isolation: record.isolation,
      plantsHarvested: record.plantsHarvested,
      cleanWeightG: record.cleanWeightG,
      thousandSeedWeightG: amount.ok ? amount.thousandSeedWeightG : record.thousandSeedWeightG,
      treatment: record.treatment,
      notes: record.notes,
      createdAt: writer.now,
    });
    const packetId = newId();
    const storedOn = record.packedOn ?? record.harvestedOn;
    writer.insert('Packet', {
      id: packetId,
      number: writer.nextNumber('P', 5, (taken) => packetTaken.get(taken) !== undefined),
      lotId,
      createdAt: writer.now,
    });
    writer.insert('Placement', {
      id: newId(),
      packetId,
      storeId: storeFor(record.store),
      from: storedOn,
      container: record.container ?? UNKNOWN_CONTAINER,
      moisturePercent: record.moisturePercent,
    });
    const seeds = seedsOf(record, amount);
    if (seeds > 0) {
      writer.insert('Movement', {
        id: newId(),
        packetId,
        on: storedOn,
        reason: 'deposit',
        seeds,
        grams: record.cleanWeightG,
        seedsSd: spreadOfAmount({
          seeds,
          weighedG: amount.ok && amount.from !== 'counted' ? (record.cleanWeightG ?? null) : null,
          seedWeightError: amount.ok && amount.from === 'estimated' ? usualSeedWeightError(fewest, most) : undefined,
        }),
        note:
          amount.ok && amount.from === 'estimated' ? 'imported; estimated from the usual seed of the crop' : 'imported',
        byId: writer.person.id,
        recordedAt: writer.now,
      });
    }
    writer.audit('lot', lotId, `Added lot ${number} of ${accession.name} with an import (line ${record.line})`);
    return [lotId];
  };
}

/** A count is believed before a weight that disagrees with it: the dry run has said so. */
function seedsOf(record: LotRecord, amount: ReturnType<typeof seedsInLot>): number {
  if (amount.ok) return amount.seeds;
  return amount.reason === 'figures-disagree' ? (record.seedCount ?? 0) : 0;
}
