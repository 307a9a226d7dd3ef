import 'server-only';
import type { LabelledBag } from '@/lib/domain/labels/bag-label';
import { gramsToWeighOut } from '@/lib/domain/stock/grams-to-weigh-out';
import { reader } from '../database/connections';
import { lastGerminations } from './last-germination';

export interface BagsToLabel {
  recipient: string;
  /** in the order of the list */
  bags: (LabelledBag & { lineId: string })[];
}

/**
 * The bags of a request, one a line that has a lot: as many statements however many there are. What was sent stands with
 * the seeds that went; lines that were taken back did not go, and have no bag.
 *
 * @param number  'R-0001'
 * @returns null when there is no such request
 * Checked in tests/server/queries/bag-labels.test.ts
 */
export async function findBagsToLabel(number: string): Promise<BagsToLabel | null> {
  const [request, bank] = await Promise.all([
    reader().sharingRequest.findUnique({
      where: { number },
      select: {
        number: true,
        recipient: true,
        lines: {
          where: { lotId: { not: null } },
          orderBy: { position: 'asc' },
          select: {
            id: true,
            seeds: true,
            accession: { select: { name: true, sharing: true, crop: { select: { name: true } } } },
            lot: {
              select: { id: true, number: true, harvestedOn: true, treatment: true, thousandSeedWeightG: true },
            },
            movement: { select: { seeds: true, corrected: { select: { id: true } } } },
          },
        },
      },
    }),
    reader().bank.findUniqueOrThrow({ where: { id: 1 }, select: { name: true } }),
  ]);
  if (!request) return null;
  const germinations = await lastGerminations(request.lines.flatMap(({ lot }) => (lot ? [lot.id] : [])));
  const bags = request.lines.flatMap(({ accession, lot, movement, ...line }): BagsToLabel['bags'] => {
    if (!lot || movement?.corrected) return [];
    const seeds = movement ? -movement.seeds : line.seeds;
    const tested = germinations.get(lot.id);
    return [
      {
        lineId: line.id,
        requestNumber: request.number,
        bankName: bank.name,
        lotNumber: lot.number,
        accessionName: accession.name,
        cropName: accession.crop.name,
        harvestedOn: lot.harvestedOn,
        seeds,
        grams: seeds === null ? null : gramsToWeighOut(seeds, lot.thousandSeedWeightG),
        germination: tested ? { germinated: tested.normal, sown: tested.seeds, testedOn: tested.finishedOn } : null,
        treatment: lot.treatment,
        onTerms: accession.sharing === 'with-terms',
      },
    ];
  });
  return { recipient: request.recipient, bags };
}
