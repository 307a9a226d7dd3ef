import 'server-only';
import type { AccessionRecord } from '@/lib/schemas/import/records';
import { searchTextOf } from '../judging/search-text';
import { newId } from '../new-id';
import type { BulkWriter } from './bulk-writer';

/** @returns a function that writes one accession */
export function accessionWriter(writer: BulkWriter): (record: AccessionRecord) => string[] {
  const crops = new Map(
    writer.database
      .prepare<[], { id: string; name: string; scientificName: string }>(
        `SELECT "id", "name", "scientificName" FROM "Crop"`,
      )
      .all()
      .map((crop) => [crop.name, crop]),
  );
  return (record) => {
    const crop = crops.get(record.crop);
    if (!crop) throw new Error(`crop ${record.crop} was not made`);
    const id = newId();
    writer.insert('Accession', {
      id,
      number: record.number,
      name: record.name,
      cropId: crop.id,
      donor: record.donor,
      acquiredOn: record.acquiredOn,
      origin: record.origin,
      notes: record.notes,
      ...(record.sharing && { sharing: record.sharing.sharing, sharingTerms: record.sharing.terms }),
      createdAt: writer.now,
    });
    writer.insert('AccessionJudgement', {
      accessionId: id,
      judgedOn: writer.today,
      accessionNumber: record.number,
      accessionName: record.name,
      cropId: crop.id,
      cropName: crop.name,
      searchText: searchTextOf([record.number, record.name, crop.name, crop.scientificName]),
      lots: 0,
      seedsLeft: 0,
      action: 'leave',
      urgency: 0,
      sentence: 'No seed of it is stored yet.',
    });
    writer.audit(
      'accession',
      id,
      `Added accession ${record.number} ${record.name} with an import (line ${record.line})`,
    );
    return [];
  };
}
