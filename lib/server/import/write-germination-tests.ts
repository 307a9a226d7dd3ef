import 'server-only';
import { codeKey } from '@/lib/schemas/import/import-context';
import type { GerminationTestRecord } from '@/lib/schemas/import/records';
import { newId } from '../new-id';
import type { BulkWriter } from './bulk-writer';

/** @returns a function that writes one test with its replicate, and gives the id of its lot for judging */
export function germinationTestWriter(writer: BulkWriter): (record: GerminationTestRecord) => string[] {
  const lots = new Map(
    writer.database
      .prepare<[], { id: string; number: string }>(`SELECT "id", "number" FROM "Lot"`)
      .all()
      .map((lot) => [codeKey(lot.number), lot]),
  );
  const testTaken = writer.database.prepare(
    `SELECT 1 FROM "GerminationTest" WHERE "number" = @number UNION ALL SELECT 1 FROM "Tray" WHERE "number" = @number`,
  );
  return (record) => {
    const lot = lots.get(codeKey(record.lotNumber));
    if (!lot) throw new Error(`lot ${record.lotNumber} is gone`);
    const id = newId();
    const number = writer.nextNumber('T', 4, (taken) => testTaken.get({ number: taken }) !== undefined);
    writer.insert('GerminationTest', {
      id,
      number,
      lotId: lot.id,
      setOn: record.setOn,
      finishedOn: record.closedOn,
      method: record.method,
      notes: notesOf(record),
      byId: writer.person.id,
      recordedAt: writer.now,
    });
    record.replicates.forEach((replicate, position) => {
      writer.insert('Replicate', { testId: id, position, ...replicate });
    });
    writer.audit(
      'germination test',
      id,
      `Added test ${number} of lot ${lot.number} with an import (line ${record.line})`,
    );
    return [lot.id];
  };
}

function notesOf({ notes, replicatesSet }: GerminationTestRecord): string | undefined {
  if (!replicatesSet) return notes;
  return [notes, `${replicatesSet} replicates were set; only their total was kept.`].filter(Boolean).join('\n');
}
