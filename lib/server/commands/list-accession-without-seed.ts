import type { Prisma } from '@/generated/prisma/client';
import { searchTextOf } from '../judging/search-text';

/**
 * Lists an accession that has no lot yet, or its new name: lists read what judging wrote, and judging goes by lots.
 * An accession with lots is judged anew instead (context.rejudge).
 */
export async function listAccessionWithoutSeed(tx: Prisma.TransactionClient, accessionId: string): Promise<void> {
  const accession = await tx.accession.findUniqueOrThrow({
    where: { id: accessionId },
    select: { number: true, name: true, cropId: true, crop: { select: { name: true, scientificName: true } } },
  });
  const named = {
    accessionNumber: accession.number,
    accessionName: accession.name,
    cropId: accession.cropId,
    cropName: accession.crop.name,
    searchText: searchTextOf([accession.number, accession.name, accession.crop.name, accession.crop.scientificName]),
  };
  await tx.accessionJudgement.upsert({
    where: { accessionId },
    create: {
      accessionId,
      judgedOn: '',
      ...named,
      lots: 0,
      seedsLeft: 0,
      action: 'leave',
      urgency: 0,
      sentence: 'No seed of it is stored yet.',
    },
    update: named,
  });
}
